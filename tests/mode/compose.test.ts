// Procedures composed with the table: what is possible as written, and what one slip or one surprise makes possible.
import { expect, test } from 'vitest';
import { expectedModes, stepModes } from '../../lib/mode/expect.ts';
import { type Flight, fly, story } from '../../lib/mode/flights.ts';
import { lineWords } from '../../lib/mode/layout.ts';
import { pathWords } from '../../lib/mode/path.ts';
import { AS_WRITTEN, ONE_SLIP, settingWords } from '../../lib/mode/setting.ts';
import { procedureWith, type StepParts } from '../../lib/procedure/build.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { procedureNames, seedProcedure } from '../kit/seed.ts';
import { tn182 } from '../kit/sheets.ts';

const { modes } = tn182();
const climbing = (...steps: StepParts[]): Procedure =>
  procedureWith({
    phases: ['climb'],
    entry: { thrust: ['CLIMB'], lateral: ['ROUTE'], vertical: ['ASCENT'], armed: ['ALT'] },
    steps,
  });
const only = (procedure: Procedure, standard: string, setting = AS_WRITTEN): Flight =>
  fly(modes, procedure, setting).flights.find((flight) => flight.standard === standard)!;
const unarmedClimb = (flight: Flight): number =>
  flight.found.states.findIndex((key) => {
    const line = flight.composed.graph.lines[flight.composed.parts(key).state]!;
    return modes.climbing.includes(line.vertical) && line.rel === 'above' && !line.armed.includes('ALT');
  });

const turned: StepParts = {
  label: 'X1',
  cue: 'event "climb clearance"',
  who: 'PF',
  verb: 'set',
  object: 'altitude selector',
};

// Scenario 4: "… CAPTURE > turn altitude"; worse on standard B
test('a new altitude set whenever it is cleared: un-armed on B, by the path of scenario 4', () => {
  const procedure = climbing(turned);
  const flight = only(procedure, 'B');
  const path = story(procedure, flight, unarmedClimb(flight));
  expect(pathWords(path)).toBe('T22 inside capture window with ALT armed > T24 X1 set altitude selector');
  expect(lineWords(path.at(-1)!.line)).toBe('GOVERN · ROUTE · RATE-UP, nothing armed');
  expect(unarmedClimb(only(procedure, 'A'))).toBe(-1);
});

test('the corrected step of scenario 4 ends armed on both standards', () => {
  const again: StepParts = {
    label: 'X2',
    cue: 'then',
    who: 'PF',
    verb: 'press',
    object: 'ASCENT',
    expect: { thrust: 'CLIMB', vertical: 'ASCENT', armed: ['ALT'] },
  };
  const expected: StepParts = { ...turned, expect: { vertical: ['ASCENT', 'RATE-UP'] } };
  const procedure = climbing(expected, again);
  for (const standard of ['A', 'B']) {
    const flight = only(procedure, standard);
    const { script, graph, outcomes } = flight.composed;
    const before = [...flight.at[1]!.keys()].filter((state) => graph.lines[state]!.rel === 'above');
    expect(before.length).toBeGreaterThan(0);
    for (const state of before) {
      const ends = Array.from(outcomes.after(1, state), (end) => graph.lines[end]!);
      for (const line of ends) expect([line.vertical, line.armed]).toEqual(['ASCENT', ['ALT']]);
    }
    expect(script.places[1]!.prompt).toBe(true);
  }
});

test('a forgotten press, a press too late and a press made twice are different flights', () => {
  const press: StepParts = { label: 'X1', cue: 'altitude >= 5 000 ft MSL', who: 'PF', verb: 'press', object: 'LEVEL' };
  const knob: StepParts = { label: 'X2', cue: 'altitude >= 6 000 ft MSL', who: 'PF', verb: 'press', object: 'RATE' };
  const procedure = climbing(press, knob);
  // LEVEL away from the selected altitude is only there when it was pressed, and RATE was not pressed after it.
  const pressedLast = (setting: typeof AS_WRITTEN): boolean => {
    const flight = only(procedure, 'A', setting);
    const lines = [...flight.at[2]!.keys()].map((state) => flight.composed.graph.lines[state]!);
    return lines.some((line) => line.vertical === 'LEVEL' && line.rel === 'above');
  };
  expect(pressedLast(AS_WRITTEN)).toBe(false);
  expect(pressedLast({ ...AS_WRITTEN, late: ['X1'], atOnce: 1 })).toBe(true);
  expect(pressedLast({ ...AS_WRITTEN, twice: ['X1'], atOnce: 1 })).toBe(true);
  expect(pressedLast({ ...AS_WRITTEN, forgotten: ['X2'], atOnce: 1 })).toBe(true);
  expect(pressedLast({ ...AS_WRITTEN, late: ['X2'], forgotten: ['X1'], atOnce: 1 })).toBe(true);
  expect(pressedLast({ ...AS_WRITTEN, forgotten: ['X1'], atOnce: 1 })).toBe(false);
});

test('a path says which step was put off and done late', () => {
  const procedure = climbing({ label: 'X1', cue: 'event "now"', who: 'PF', verb: 'press', object: 'LEVEL' });
  const flight = only(procedure, 'A', { ...AS_WRITTEN, late: 'all', atOnce: 1 });
  const index = flight.found.states.findIndex((key) => {
    const { place, owed, slips, state } = flight.composed.parts(key);
    return place === 1 && owed === null && slips === 1 && flight.composed.graph.lines[state]!.vertical === 'LEVEL';
  });
  expect(pathWords(story(procedure, flight, index))).toBe('X1 press LEVEL is put off > T21 X1 press LEVEL, late');
});

test('a surprise comes once, and an engine failure changes nothing', () => {
  const procedure = climbing({ label: 'X1', cue: 'event "now"', who: 'PM', verb: 'read', object: 'mode line' });
  const calm = only(procedure, 'A');
  const failure = only(procedure, 'A', { ...AS_WRITTEN, environment: ['engine failure'] });
  expect(failure.found.states.length).toBe(2 * calm.found.states.length);
  const around = only(procedure, 'A', { ...AS_WRITTEN, environment: ['go-around'] });
  expect([...around.at[1]!.keys()].some((state) => around.composed.graph.lines[state]!.vertical === 'LIFT')).toBe(true);
});

test('the result says what was allowed', () => {
  expect(settingWords(AS_WRITTEN)).toBe('every step done as written; no surprise');
  expect(settingWords({ ...ONE_SLIP, twice: 'none', environment: ['signal loss'] })).toBe(
    'any step late; any step forgotten; 1 slip at most; surprises: signal loss',
  );
  expect(fly(modes, climbing(turned), ONE_SLIP).setting).toBe(settingWords(ONE_SLIP));
});

test('an entry that no state fits, and a surprise that the sheet does not know, are refused with the reason', () => {
  const never = procedureWith({
    phases: ['climb'],
    entry: { thrust: ['LATCHED'], vertical: ['LEVEL'] },
    steps: [turned],
  });
  expect(fly(modes, never).refused.map(({ because }) => because)[0]).toContain('fits the entry line');
  const unknown = fly(modes, climbing(turned), { ...AS_WRITTEN, environment: ['hail'] });
  expect(unknown.refused[0]!.because).toContain('hail');
});

test.each(procedureNames())('%s is explored whole on both standards, with any one slip', (name) => {
  const flights = fly(modes, seedProcedure(name), ONE_SLIP);
  expect([flights.complete, flights.flights.length]).toEqual([true, 2]);
});

test('modes before and after a step, certain and possible', () => {
  const procedure = seedProcedure('climb-altitude-change');
  const flights = fly(modes, procedure);
  const at = (label: string) => procedure.steps.find((step) => step.label === label)!;
  const press = stepModes(flights, at('CL-12'));
  expect([press.before.vertical, press.after.vertical]).toEqual([['ASCENT'], ['RATE-UP']]);
  expect(press.after.armedPossible).toEqual(['ALT']);
  expect(stepModes(flights, at('CL-03')).before.vertical.length).toBeGreaterThan(1);
  expect(expectedModes(flights, at('CL-12'))).toEqual({
    thrust: 'GOVERN',
    lateral: 'same',
    vertical: 'RATE-UP',
    armed: 'same',
  });
});
