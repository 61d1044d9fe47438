// Whole flights: energy, order of what happens, what is refused and what is kept, and the same figures each time.
import { expect, test } from 'vitest';
import { flyProcedure } from '../../lib/flight/fly.ts';
import { FLIGHT, type Settings, TAKE_OFF } from '../../lib/flight/settings.ts';
import { conditionsFor, settingsFor } from '../../lib/flight/start.ts';
import { type Conditions, FLIGHT_VERSION, SAMPLE_COLUMNS, type Trace } from '../../lib/flight/trace.ts';
import { type ProcedureParts, procedureWith, type StepParts } from '../../lib/procedure/build.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { procedureNames, seedProcedure } from '../kit/seed.ts';
import { housePolicy, tn182 } from '../kit/world.ts';

const facts = { sheet: tn182, policy: housePolicy };

function fly(procedure: Procedure, given: Partial<Conditions> = {}, more: Partial<Settings> = {}): Trace {
  const conditions = conditionsFor(procedure, facts, { weight: 62_000, ...given });
  return flyProcedure(procedure, facts, conditions, { ...settingsFor(procedure, tn182), ...more });
}
const lever = (cue: string, value: string, parts: StepParts = {}): StepParts => ({
  label: value,
  cue,
  verb: 'select',
  object: 'flap lever',
  value,
  ...parts,
});
const level = (steps: readonly StepParts[], parts: ProcedureParts = {}): Procedure =>
  procedureWith({ phases: ['cruise'], steps, ...parts });
/** The key of a rule's effect. */
const EFFECT = 'then';
const NOTHING: StepParts = { label: 'N', cue: 'speed >= 400 kt', verb: 'check', object: 'speed' };

test('energy height gained is the integral of specific excess power', () => {
  const climb = level([NOTHING], { entry: { vertical: ['ASCENT'], thrust: ['CLIMB'], armed: [] } });
  const start = { ...FLIGHT.start, height: 1500, speed: '250 kt', detent: 'F0', verticalSpeed: 3600 };
  const trace = fly(climb, { selectedAltitude: 30_000 }, { start, spool: false, longest: 300, sampling: 0.25 });
  const { time, excess, energy } = trace.samples;
  let sum = 0;
  for (let k = 1; k < time.length; k++) sum += ((excess[k]! + excess[k - 1]!) / 2) * (time[k]! - time[k - 1]!);
  const gained = energy.at(-1)! - energy[0]!;
  expect(Math.abs(gained / sum - 1)).toBeLessThan(1e-4);
  // Another program has 5 200 m for the same five minutes.
  expect(Math.abs(gained / 5200.3 - 1)).toBeLessThan(1e-3);
  expect(trace.end.reason).toBe('time');
});

test.each(procedureNames().map((name) => [name]))('energy, columns and times of %s', (name) => {
  const trace = fly(seedProcedure(name), { weight: 60_000 }, { sampling: 0.25 });
  const { time, excess, energy } = trace.samples;
  expect(trace.end.reason).not.toBe('refused');
  let sum = 0;
  for (let k = 1; k < time.length; k++) {
    expect(time[k]!).toBeGreaterThanOrEqual(time[k - 1]!);
    sum += ((excess[k]! + excess[k - 1]!) / 2) * (time[k]! - time[k - 1]!);
  }
  // Energy in metres: whatever the law, nothing is gained but by excess power.
  expect(Math.abs(energy.at(-1)! - energy[0]! - sum)).toBeLessThan(0.001 * Math.max(1000, Math.abs(sum)));
  for (const { name: column } of SAMPLE_COLUMNS) {
    expect(trace.samples[column]).toHaveLength(time.length);
    expect([column, trace.samples[column].every((value) => Number.isFinite(value))]).toEqual([column, true]);
  }
  const times = trace.events.map((one) => one.time);
  expect(times).toEqual([...times].sort((a, b) => a - b));
  for (const { gate, act, done } of trace.steps) {
    if (gate !== null && act !== null) expect(act).toBeGreaterThanOrEqual(gate);
    if (act !== null && done !== null) expect(done).toBeGreaterThanOrEqual(act);
  }
});

test('the same flight twice is the same to the last bit, and says by which engine it was flown', () => {
  const procedure = seedProcedure('go-around');
  const [one, other] = [fly(procedure), fly(structuredClone(procedure))];
  expect(other).toEqual(one);
  expect(one.version).toBe(FLIGHT_VERSION);
  expect(one.cannot.length).toBeGreaterThan(5);
  expect(one.assumptions[0]).toContain('62.0 t');
});

test('an event is found to a millisecond, whatever the steps of the integration', () => {
  const takeOff = seedProcedure('normal-take-off');
  const times = [1e-5, 1e-6, 1e-9].map((tolerance) =>
    fly(takeOff, { weight: 78_600, accelerationHeight: 3000 }, { tolerance, end: 'flaps F0 selected' })
      .events.filter((one) => ['mode', 'flap'].includes(one.kind))
      .map((one) => one.time),
  );
  const [coarse, usual, fine] = times;
  expect(fine!.length).toBeGreaterThan(4);
  for (const [k, time] of fine!.entries()) {
    expect(Math.abs(usual![k]! - time)).toBeLessThan(1e-3);
    expect(Math.abs(coarse![k]! - time)).toBeLessThan(1e-2);
  }
});

test('a level-off, a turn and a descent obey the mode table', () => {
  const steps: StepParts[] = [
    { label: 'A', cue: 'altitude >= 9 000 ft MSL', verb: 'set', object: 'altitude selector', value: '11 000 ft' },
    { label: 'B', cue: 'after A', verb: 'press', object: 'ASCENT', value: '' },
    { label: 'C', cue: 'vertical = LEVEL and after B', verb: 'press', object: 'HEADING', value: '090' },
    { label: 'D', cue: '60 s after C', verb: 'set', object: 'altitude selector', value: '8 000 ft' },
    { label: 'E', cue: 'after D', verb: 'press', object: 'DESCENT', value: '' },
    { label: 'F', cue: 'vertical = LEVEL and after E', verb: 'check', object: 'altitude', value: '' },
  ];
  const trace = fly(level(steps), { turnTo: 90 }, { reaction: 'none' });
  expect(trace.problems).toEqual([]);
  const words = trace.lines.map((one) => one.line.vertical).filter((word, k, all) => word !== all[k - 1]);
  expect(words).toEqual(['LEVEL', 'ASCENT', 'CAPTURE', 'LEVEL', 'DESCENT', 'CAPTURE', 'LEVEL']);
  expect(trace.samples.altitude.at(-1)).toBeCloseTo(8000, -1);
  expect(Math.max(...trace.samples.altitude)).toBeLessThan(11_020);
  expect(trace.samples.heading.at(-1)).toBeCloseTo(90, 0);
  expect(Math.max(...trace.samples.bank)).toBeLessThanOrEqual(25.01);
  expect(trace.samples.east.at(-1)).toBeGreaterThan(5);
});

test('below VMM the bank is kept small, above it is free', () => {
  const turn: StepParts = { label: 'T', cue: 'speed > 0 kt', verb: 'press', object: 'HEADING', value: '180' };
  const slow = { ...FLIGHT.start, height: 5000, speed: 'VMM F6 - 5 kt', detent: 'F6' };
  const bank = (start: Settings['start']): number =>
    Math.max(
      ...fly(
        level([turn, NOTHING], { entry: { flaps: ['F6'] } }),
        { turnTo: 120 },
        { start, reaction: 'none', longest: 25 },
      ).samples.bank.map(Math.abs),
    );
  expect(bank(slow)).toBeLessThan(15.1);
  expect(bank({ ...slow, speed: 'VMM F6 + 20 kt' })).toBeGreaterThan(24);
});

test('speed on thrust settles on its target, with the lag of the engines', () => {
  const faster: StepParts = { label: 'S', cue: 'speed > 0 kt', verb: 'set', object: 'speed selector', value: '280 kt' };
  const trace = fly(level([faster]), {}, { reaction: 'none' });
  expect(trace.samples.speed.at(-1)).toBeCloseTo(280, 0);
  expect(trace.samples.altitude.at(-1)).toBeCloseTo(10_000, 0);
  expect(Math.max(...trace.samples.speed)).toBeLessThan(285);
});

test('the flap takes its time, stop by stop, and gates wait for the indication', () => {
  const steps = [lever('speed < 250 kt', 'F6'), lever('flaps F6 indicated', 'F12')];
  const start = { ...FLIGHT.start, height: 5000, speed: '190 kt', detent: 'F0' };
  const trace = fly(level(steps), {}, { reaction: 'none', start });
  const at = trace.events.filter((one) => one.kind === 'flap' || one.kind === 'flap-there').map((one) => one.time);
  expect(at).toEqual([0, 9, 9, 14]);
  expect(trace.transits).toEqual([
    { what: 'flap', from: 'F0', to: 'F6', begins: 0, ends: 9, step: 'F6' },
    { what: 'flap', from: 'F6', to: 'F12', begins: 9, ends: 14, step: 'F12' },
  ]);
});

test('words and hands take the time of the policy, and a late crew is later', () => {
  const procedure = seedProcedure('go-around');
  const slow = fly(procedure, {}, { reaction: 'policy', hands: {} });
  const gear = (trace: Trace): number => trace.events.find((one) => one.kind === 'gear')!.time;
  expect(gear(slow)).toBeGreaterThan(3);
  const step = procedure.steps.find((one) => one.object === 'gear lever')!;
  const late = fly(procedure, {}, { reaction: 'policy', hands: {}, late: { [step.id]: 4 } });
  expect(gear(late) - gear(slow)).toBeCloseTo(4, 3);
});

test('the standards part where the altitude is turned in a capture', () => {
  const turn: StepParts = {
    label: 'K',
    cue: 'vertical = CAPTURE',
    verb: 'set',
    object: 'altitude selector',
    value: '19 000 ft',
  };
  const climb = { entry: { vertical: ['ASCENT'], thrust: ['CLIMB'], armed: ['ALT'] } };
  const armed = (standard: string): readonly string[] => {
    const trace = fly(level([turn], climb), { standard, selectedAltitude: 14_000 }, { reaction: 'none', longest: 400 });
    expect(trace.events.map((one) => one.rule)).toContain('T24');
    return trace.lines.find((one) => one.line.vertical === 'RATE-UP')!.line.armed;
  };
  expect(armed('A')).toEqual(['ALT']);
  expect(armed('B')).toEqual([]);
});

test('a gate that never comes true is named, and the flight up to there is kept', () => {
  const trace = fly(level([lever('speed >= 330 kt', 'F6')]));
  expect(trace.problems.map((one) => one.says)).toEqual([
    'F6: its cue never came true in this flight: speed >= 330 kt',
  ]);
  expect(trace.steps[0]).toEqual({ step: 'F6', gate: null, act: null, done: null, left: 'its gate never came true' });
  expect(trace.end.reason).toBe('complete');
  expect(trace.samples.time.length).toBeGreaterThan(30);
});

test.each([
  [{ weight: 120_000 }, 'A weight of 120.0 t is outside the sheet: 46.0 t to 78.6 t.'],
  [{ weight: Number.NaN }, 'The condition weight is no number.'],
  [{ elevation: 20_000 }, 'An elevation of 20000 ft is outside the sheet'],
  [{ temperature: 60 }, 'A temperature of standard 60 °C is outside the sheet'],
  [{ wind: 200 }, 'A head wind of 200 kt is outside the sheet'],
  [{ detent: 'F99' }, 'The sheet has no detent F99.'],
  [{ enginesOut: 2 }, 'No engine is left to fly with.'],
  [{ standard: 'Z' }, 'The mode table of the sheet can'],
])('what the sheet does not cover is refused in a sentence: %o', (given, says) => {
  const trace = fly(seedProcedure('normal-take-off'), given);
  expect(trace.end.reason).toBe('refused');
  expect(trace.end.says).toContain(says);
  expect(trace.problems).toEqual([{ time: 0, step: null, says: trace.end.says }]);
  expect(trace.samples.time).toHaveLength(0);
});

test('a procedure without steps and a cue that is no gate are sentences too', () => {
  expect(fly(level([])).end.says).toBe('The procedure has no steps.');
  const trace = fly(level([lever('when it looks right, perhaps', 'F6')]));
  expect(trace.problems.some((one) => one.says.includes("can't be read"))).toBe(true);
  expect(trace.end.reason).toBe('complete');
});

test('a loop of steps is broken, said, and flown on from', () => {
  const back: StepParts[] = [
    { label: 'A', cue: 'speed > 0 kt', verb: 'check', object: 'speed' },
    { label: 'B', cue: 'then', verb: 'check', object: 'speed', branch: [{ when: '', to: 'A' }] },
    { label: 'C', cue: '5 s after B', verb: 'check', object: 'speed' },
  ];
  const trace = fly(level(back), {}, { reaction: 'none' });
  expect(trace.problems.map((one) => one.says)).toEqual([
    'B sends back to A again and again; the flight goes on behind it.',
  ]);
  expect(trace.steps.at(-1)!.done).toBeGreaterThan(4);
});

test('modes that chase one another at one moment end the flight with a sentence', () => {
  const rules = tn182.modes.rules.map((rule) =>
    rule.id === 'T20' && 'when' in rule
      ? { ...rule, when: { vertical: { in: ['LEVEL'] } }, [EFFECT]: { vertical: 'PITCH' } }
      : rule.id === 'T09' && 'when' in rule
        ? { ...rule, when: { vertical: { in: ['PITCH'] } }, [EFFECT]: { vertical: 'LEVEL' } }
        : rule,
  );
  const sheet = { ...tn182, modes: { ...tn182.modes, rules } };
  const procedure = level([NOTHING]);
  const conditions = conditionsFor(procedure, { sheet, policy: housePolicy }, { weight: 60_000 });
  const trace = flyProcedure(procedure, { sheet, policy: housePolicy }, conditions, settingsFor(procedure, sheet));
  expect(trace.end.reason).toBe('limit');
  expect(trace.problems[0]!.says).toContain('again and again');
});

test('a flight that never ends is broken off, and one that stalls ends there', () => {
  const climb = level([NOTHING], { entry: { vertical: ['ASCENT'], thrust: ['CLIMB'], armed: [] } });
  const long = fly(climb, { selectedAltitude: 38_000, weight: 50_000 }, { longest: 60 });
  expect(long.end).toEqual({ time: 60, reason: 'time', says: 'The flight did not end within 60 s.' });
  expect(long.problems.some((one) => one.says === long.end.says)).toBe(true);
  const idle = level([NOTHING], { entry: { vertical: ['LEVEL'], thrust: ['IDLE'], armed: [] } });
  const stalled = fly(idle);
  expect(stalled.end.reason).toBe('limit');
  expect(stalled.end.says).toContain('stall');
  expect(stalled.samples.speed.at(-1)).toBeGreaterThan(100);
});

test('sensitivities move the flight the way they must', () => {
  const takeOff = seedProcedure('normal-take-off');
  const end = (more: Partial<Settings>, given: Partial<Conditions> = {}): Trace =>
    fly(takeOff, { accelerationHeight: 3000, ...given }, { ...more, end: 'speed >= 250 kt and flaps F0 indicated' });
  const base = end({});
  expect(end({ factors: { drag: 1.05, thrust: 1 } }).end.time).toBeGreaterThan(base.end.time);
  expect(end({}, { temperature: 30 }).end.time).toBeGreaterThan(base.end.time);
  expect(end({}, { wind: 20 }).samples.distance.at(-1)!).toBeLessThan(base.samples.distance.at(-1)!);
  expect(end({ delay: 2 }).end.time).toBeGreaterThan(base.end.time);
  expect(end({}, { windGradient: 5 }).end.time).toBeLessThan(base.end.time);
  expect(TAKE_OFF.delay).toBe(0);
});
