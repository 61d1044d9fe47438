// What a flight tells when it is over: the trace, with its assumptions before everything else.
import type { Procedure } from '../procedure/procedure.ts';
import type { Flight, FlightFacts } from './flight.ts';
import { entered } from './pending.ts';
import { newRows } from './record.ts';
import type { Settings } from './settings.ts';
import { type Conditions, FLIGHT_VERSION, type StepTimes, type Trace } from './trace.ts';

/** What this model can't say (D8): printed beside every figure that comes from it. */
const CANNOT: readonly string[] = [
  'handling, pitch and roll as they feel',
  'the flare and the ground roll',
  'asymmetric control with an engine out',
  'turbulence and windshear',
  'how a real autopilot flies, and when alerts come',
  'real thrust ratings',
  'performance for dispatch',
];

const COMMON: readonly string[] = [
  'Point mass with the drag and thrust of the sheet; standard pressure, so that altitude is pressure altitude.',
  'Lift carries the weight; a pull-up costs no drag, a bank does.',
];

const NEVER = 'its gate never came true';

function assumed(settings: Settings, conditions: Conditions): string[] {
  const head =
    conditions.wind === 0 ? 'Calm' : `${Math.abs(conditions.wind)} kt ${conditions.wind > 0 ? 'head' : 'tail'} wind`;
  const shear = conditions.windGradient === 0 ? '' : `, ${conditions.windGradient} kt more for each 1 000 ft`;
  const off =
    conditions.temperature === 0
      ? 'standard day'
      : `${conditions.temperature > 0 ? '+' : '−'}${Math.abs(conditions.temperature)} °C from standard`;
  return [
    `${(conditions.weight / 1000).toFixed(1)} t, elevation ${conditions.elevation} ft, ${off}. ${head}${shear}.`,
    ...settings.assumptions,
    ...COMMON,
  ];
}

export function refusedTrace(
  procedure: Procedure,
  facts: FlightFacts,
  conditions: Conditions,
  settings: Settings,
  says: string,
): Trace {
  return {
    version: FLIGHT_VERSION,
    conditions,
    assumptions: assumed(settings, conditions),
    cannot: CANNOT,
    detents: facts.sheet.detents.map((detent) => detent.name),
    samples: newRows().finish(),
    events: [],
    lines: [],
    transits: [],
    steps: procedure.steps.map((step) => ({ step: step.id, gate: null, act: null, done: null, left: 'not flown' })),
    problems: [{ time: 0, step: null, says }],
    end: { time: 0, reason: 'refused', says },
  };
}

export function traceOf(flight: Flight): Trace {
  const { script, conditions, settings, craft, log, rows, guidance, now } = flight;
  const end = flight.end ?? { reason: 'time' as const, says: '' };
  const steps = script.waiting.map((one): StepTimes => {
    const never = one.gate === null && one.left === '';
    const left = never ? (entered(script, one) ? NEVER : 'not for this flight') : one.left;
    return { step: one.step.id, gate: one.gate, act: one.act, done: one.done, left };
  });
  const problems = [
    ...script.unread.map(({ step, says }) => ({ time: 0, step: step.id, says })),
    ...flight.problems,
    ...script.waiting
      // Of a flight that was ended on purpose the rest was not asked; what has a condition may well not have met it.
      .filter((one, place) => end.reason !== 'reached' && one.step.only === '' && steps[place]!.left === NEVER)
      .map(({ step }) => ({
        time: now.time,
        step: step.id,
        says: `${step.label || 'The step'}: its cue never came true in this flight: ${step.cue}`,
      })),
  ];
  return {
    version: FLIGHT_VERSION,
    conditions,
    assumptions: [
      ...assumed(settings, conditions),
      ...script.taken.map(({ step, words }) => `${step.label || 'A step'} is taken as for this flight: ${words}.`),
      ...(guidance.silent.length === 0 ? [] : [`Never raised in this flight: ${guidance.silent.join('; ')}.`]),
    ],
    cannot: CANNOT,
    detents: craft.detents,
    samples: rows.finish(),
    events: log.events,
    lines: log.lines,
    transits: log.transits,
    steps,
    problems,
    end: { time: now.time, ...end },
  };
}
