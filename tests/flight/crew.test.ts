import { describe, expect, it } from 'vitest';
import { dutiesOf, stepOfDuty } from '../../lib/flight/crew.ts';
import { timeline } from '../../lib/flight/timeline.ts';
import { procedureWith, type StepParts } from '../../lib/procedure/build.ts';
import { seedProcedure } from '../kit/seed.ts';
import { traceOf } from '../kit/trace.ts';
import { housePolicy, tn182 } from '../kit/world.ts';

const given = { policy: housePolicy, sheet: tn182, items: () => null, forced: () => false };
function spans(
  steps: readonly StepParts[],
  gates: Parameters<typeof traceOf>[1],
  columns: Parameters<typeof traceOf>[2] = {},
) {
  const procedure = procedureWith({ steps });
  return timeline(dutiesOf({ ...given, procedure, trace: traceOf(procedure, gates, columns) })).spans.map(
    ({ duty, start, end }) => [duty.id, duty.who, Number(start.toFixed(3)), Number(end.toFixed(3))],
  );
}

// House policy: 2.5 words a second, lever 3 s, press and read 3 s, altitude 3 s, radio 6 s, entry 15 s, reaction 3 s.
describe('a step in time', () => {
  it('is ordered, done, said and answered, each behind the other', () => {
    const flap = {
      cue: 'speed >= 160 kt',
      orderBy: 'PF',
      orderWords: 'flap twelve',
      who: 'PM',
      verb: 'select',
    } as const;
    const got = spans([{ ...flap, object: 'flap lever', value: 'F12', say: 'speed checked … twelve' }], { s1: 4 });
    // Two words 0.8 s; the lever's 3 s hold the three words, which are its end.
    expect(got).toEqual([
      ['s1/order', 'PF', 4, 4.8],
      ['s1/act', 'PM', 4.8, 7.8],
    ]);
  });
  it('counts press and reading as one', () => {
    const press = {
      cue: 'height >= 400 ft AAL',
      who: 'PM',
      verb: 'press',
      object: 'HEADING',
      reply: 'heading',
    } as const;
    expect(spans([press], { s1: 0 })).toEqual([
      ['s1/act', 'PM', 0, 2.6],
      ['s1/reply', 'PF', 2.6, 3],
    ]);
  });
  it('gives a call its words, and a challenge the time of a challenge–response', () => {
    const call = { cue: 'speed >= 95 kt', who: 'PM', verb: 'call', say: 'ninety-five', reply: 'checked' } as const;
    expect(spans([call], { s1: 0 })).toEqual([
      ['s1/say', 'PM', 0, 0.8],
      ['s1/reply', 'PF', 0.8, 1.2],
    ]);
    expect(spans([{ ...call, verb: 'respond' }], { s1: 0 })[1]).toEqual(['s1/reply', 'PF', 0.8, 2.5]);
  });
  it('gives the radio and typing what the policy gives them', () => {
    const radio = {
      cue: 'speed >= 95 kt',
      who: 'PM',
      verb: 'call',
      object: 'radio',
      say: '(radio) going around',
    } as const;
    const page = { cue: 'then', who: 'PM', verb: 'set', object: 'route page', flags: ['eyes-down'] } as const;
    expect(spans([radio, page], { s1: 0, s2: [0, 15] })).toEqual([
      ['s1/say', 'PM', 0, 6],
      ['s2/act', 'PM', 6, 21],
    ]);
  });
  it('of each is done by both', () => {
    const set = {
      cue: 'altitude >= transition altitude',
      who: 'each',
      verb: 'set',
      object: 'altimeter',
      sayBy: 'PF',
    } as const;
    expect(spans([{ ...set, say: 'standard set' }], { s1: 1 })).toEqual([
      ['s1/act PF', 'PF', 1, 4],
      ['s1/act PM', 'PM', 1, 4],
      ['s1/say', 'PF', 4, 4.8],
    ]);
  });
});

// A press alone is half of press and read, a reading the other half and its words.
describe('what a step waits for', () => {
  const press = {
    cue: 'event "gate not met"',
    who: 'PF',
    verb: 'press',
    object: 'GO-AROUND switch',
    label: 'A',
  } as const;
  const read = { who: 'PM', verb: 'read', object: 'mode line', say: 'go-around, straight, lift' } as const;
  it('is the step before', () => {
    expect(spans([press, { ...read, cue: 'then' }], { A: 2, s2: 2 }).map((row) => row[2])).toEqual([2, 3.5]);
  });
  it('is a step by its label, from its end, as long as said', () => {
    expect(spans([press, { ...read, cue: '4 s after A' }], { A: 2, s2: 6 })[1]).toEqual(['s2/act', 'PM', 7.5, 10.6]);
  });
  it('are words, and an order that was heard is not given again', () => {
    const climb = {
      cue: 'altitude increasing',
      who: 'PM',
      verb: 'call',
      say: 'positive climb',
      reply: 'gear up',
    } as const;
    const gear = {
      cue: 'heard "gear up"',
      orderBy: 'PF',
      orderWords: 'gear up',
      who: 'PM',
      verb: 'move',
      object: 'gear lever',
    } as const;
    expect(spans([climb, gear], { s1: 3, s2: 3 })).toEqual([
      ['s1/say', 'PM', 3, 3.8],
      ['s1/reply', 'PF', 3.8, 4.6],
      ['s2/act', 'PM', 4.6, 7.6],
    ]);
  });
  it('is the height, where that comes after the words', () => {
    const later = { ...read, cue: 'after A and height >= 400 ft AAL' };
    expect(spans([press, later], { A: 2, s2: 13 })[1]).toEqual(['s2/act', 'PM', 13, 16.1]);
  });
  it('is what the same pilot has above it in the list', () => {
    const radio = {
      cue: 'height >= 100 ft AAL',
      who: 'PM',
      verb: 'call',
      object: 'radio',
      say: '(radio) going around',
    } as const;
    expect(spans([press, radio, { ...read, cue: 'after A' }], { A: 0, s2: 1, s3: 0 })[2]).toEqual([
      's3/act',
      'PM',
      7,
      10.1,
    ]);
  });
  it('leaves out what the flight did not do', () => {
    expect(spans([press, { ...read, cue: 'then' }], { A: 2 }).map((row) => row[0])).toEqual(['A/act']);
  });
});

describe('voices from outside', () => {
  it('are the aircraft’s at its heights, and the controller’s before a clearance', () => {
    const set = { cue: 'event "altitude cleared"', who: 'PF', verb: 'set', object: 'heading selector' } as const;
    const got = spans([set], { s1: 10 }, { time: [0, 20, 40], height: [1_100, 900, 100] });
    expect(got).toEqual([
      ['controller s1', null, 4, 10],
      ['s1/act', 'PF', 10, 13],
      ['voice one thousand', null, 10, 10.8],
      ['voice five hundred', null, 30, 30.8],
      // minima 200 ft at a field at sea level.
      ['voice at minima', null, 37.5, 38.3],
    ]);
  });
});

it('every duty of the seed’s go-around belongs to a step, and each has its turn', () => {
  const procedure = seedProcedure('go-around');
  const all = Object.fromEntries(procedure.steps.map((step, index) => [step.id, index * 3]));
  const duties = dutiesOf({ ...given, procedure, trace: traceOf(procedure, all) });
  const ids = new Set(procedure.steps.map((step) => step.id as string));
  expect(duties.length).toBeGreaterThan(40);
  for (const duty of duties) expect(ids).toContain(stepOfDuty(duty));
  expect(timeline(duties).never).toEqual([]);
});
