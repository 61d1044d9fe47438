/**
 * How long one engine works at take-off thrust (D6.1 of the project's reference): 1 465 ft at the second-segment gradient and V2, then
 * the level acceleration from V2 to VMM clean, flown, each retraction at VMM of the next detent.
 */
import { segmentGradient } from '../aircraft/climb.ts';
import { forces } from '../aircraft/performance.ts';
import { plain } from '../base/arithmetic.ts';
import { evaluate } from '../base/expression.ts';
import { procedureWith } from '../procedure/build.ts';
import { FOOT } from '../units/convert.ts';
import type { FlightFacts } from './flight.ts';
import { flyProcedure } from './fly.ts';
import { ENGINE_OUT } from './settings.ts';
import { speedsOf } from './speeds.ts';
import type { Conditions, Trace } from './trace.ts';

/** From 35 ft to 1 500 ft AAL. */
const CLIMB = 1465;
const LEVEL_AT = 1500;

export type EngineOutTime = {
  /** s. */
  readonly climb: number;
  readonly acceleration: number;
  readonly total: number;
  /** NM of the level acceleration. */
  readonly distance: number;
  readonly trace: Trace;
};

/** Null where the sheet has no such gradient, or the aircraft does not climb or does not reach the speed. */
export function engineOutTime(facts: FlightFacts, conditions: Conditions): EngineOutTime | null {
  const { sheet, policy } = facts;
  const { weight, elevation, temperature, detent } = conditions;
  const gradient = segmentGradient(sheet, 'second', detent);
  const speeds = speedsOf(sheet, policy, conditions);
  const v2 = speeds.of('V2', detent);
  if (gradient === null || !(v2 > 0)) return null;
  const percent = evaluate(gradient, { weight, elevation, temperature });
  if (!(percent > 0)) return null;
  const setting = { detent, gear: 'up', enginesOut: 1, rating: 'take-off' } as const;
  const { trueSpeed } = forces(plain, sheet, setting, { speed: v2, altitude: elevation, temperature, weight });
  const climb = (CLIMB * FOOT) / ((trueSpeed * percent) / 100);

  const names = sheet.detents.map((one) => one.name);
  const [clean] = names;
  const ways = names.slice(0, names.indexOf(detent)).reverse();
  const procedure = procedureWith({
    title: 'Level acceleration, one engine out',
    class: 'engine-out',
    phases: ['climb'],
    entry: { flaps: [detent], vertical: ['LEVEL'], thrust: ['LATCHED'], lateral: ['HEADING'], armed: [] },
    steps: ways.map((name) => ({
      label: name,
      cue: `speed >= VMM ${name}`,
      verb: 'select' as const,
      object: 'flap lever',
      value: name,
    })),
  });
  const start = { ...ENGINE_OUT.start, height: LEVEL_AT };
  const settings = { ...ENGINE_OUT, start, end: `speed >= VMM ${clean} and flaps ${clean} selected` };
  const out = { ...conditions, enginesOut: 1, selectedAltitude: elevation + LEVEL_AT };
  const trace = flyProcedure(procedure, facts, out, settings);
  if (trace.end.reason !== 'reached') return null;
  const acceleration = trace.end.time;
  const distance = trace.samples.distance.at(-1) ?? 0;
  return { climb, acceleration, total: climb + acceleration, distance, trace };
}
