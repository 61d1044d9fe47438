// Scenarios 2 (its modes), 4 and 8 (its modes), on fixtures made from the seed: the seed itself has none of these faults.
import { expect, test } from 'vitest';
import { checkProcedure } from '../../lib/check/check.ts';
import { rules } from '../../lib/check/rules/index.ts';
import { stepModes } from '../../lib/mode/expect.ts';
import { fly } from '../../lib/mode/flights.ts';
import type { Procedure, Step } from '../../lib/procedure/procedure.ts';
import { seedProcedure } from '../kit/seed.ts';
import { housePolicy, tn182 } from '../kit/world.ts';

const MODES = new Set([78, 79, 80, 81, 82, 83, 84, 85, 86, 87, 88]);
const modeRules = rules.filter((rule) => MODES.has(rule.number));
const check = (procedure: Procedure) =>
  checkProcedure(procedure, { sheet: tn182, policy: housePolicy }, modeRules).findings.map((finding) => ({
    check: finding.check,
    step: procedure.steps.find((step) => step.id === finding.at.step)?.label ?? '',
    message: finding.message,
    witness: finding.witness,
  }));
const at = (procedure: Procedure, label: string): Step => procedure.steps.find((step) => step.label === label)!;

test('scenario 2: read at once LIFT is certain; read after the radio call CAPTURE may stand there', () => {
  const written = seedProcedure('go-around');
  const read = at(written, 'GA-03');
  const others = written.steps.filter((step) => step !== read);
  const behind = others.indexOf(at(written, 'GA-10')) + 1;
  const moved = { ...written, steps: [...others.slice(0, behind), { ...read, cue: 'then' }, ...others.slice(behind)] };
  const before = (procedure: Procedure) => stepModes(fly(tn182.modes, procedure), at(procedure, 'GA-03')).before;
  expect([before(written).vertical, before(written).armedCertain]).toEqual([['LIFT'], ['ALT']]);
  expect([before(moved).vertical, before(moved).armedCertain]).toEqual([['CAPTURE', 'LEVEL', 'LIFT'], []]);
  expect(check(written)).toEqual([]);
  expect(check(moved).map(({ check: id, step }) => `${id} ${step}`)).toContain('wrong-words-expected GA-03');
});

/** "when cleared, set new altitude": the step that asks for the mode first, and the branch, are left out. */
function levelOff(): Procedure {
  const written = seedProcedure('climb-altitude-change');
  const set: Step = {
    ...at(written, 'CL-03'),
    cue: 'event "climb clearance"',
    expect: { thrust: '', lateral: '', vertical: '', armed: null },
    checkIfNot: '',
  };
  const [first] = written.steps;
  return {
    ...written,
    entry: { ...written.entry, vertical: ['ASCENT'] },
    steps: [first!, set],
    branches: [],
    leavesTo: [],
  };
}

test('scenario 4: the altitude turned in CAPTURE, worse on standard B', () => {
  const [found, ...others] = check(levelOff()).filter((finding) => finding.check === 'knob-kills-capture');
  expect([others, found?.step]).toEqual([[], 'CL-03']);
  const [lostA, allA, lostB, allB] = found!.message.match(/\d+/g)!.map(Number);
  // As in the whole table, 104 of 208 on A and 208 of 208 on B (D5.2): half of the cases, and all.
  expect([lostA! * 2, lostB]).toEqual([allA, allB]);
  const { witness } = found!;
  if (witness.kind !== 'path') throw new Error('a path was wanted');
  expect(witness.standards).toEqual(['A', 'B']);
  expect(witness.says).toContain('T22 inside capture window with ALT armed');
  expect(witness.steps.at(-1)).toMatchObject({ does: 'T24 CL-03 set altitude selector', armed: [] });
  expect(witness.steps.some((move) => move.vertical === 'CAPTURE')).toBe(true);
  // Replaying the path: every line differs from the one before it by what the move may change, and begins at the entry.
  expect(witness.steps[0]).toMatchObject({ vertical: 'ASCENT', armed: ['ALT'] });
});

test('scenario 4, corrected: ASCENT pressed at once and read clears it on both standards', () => {
  const fixture = levelOff();
  const press: Step = {
    ...at(seedProcedure('climb-altitude-change'), 'CL-04'),
    cue: 'then',
    only: '',
    expect: { thrust: 'CLIMB', lateral: 'same', vertical: 'ASCENT', armed: ['ALT'] },
  };
  const mended = { ...fixture, steps: [...fixture.steps, press] };
  expect(check(mended).map(({ check: id }) => id)).not.toContain('knob-kills-capture');
});

test('scenario 8: a text of standard A does not hold on B once a tail is converted', () => {
  const fixture = levelOff();
  const [first] = fixture.steps;
  const read: Step = {
    ...fixture.steps[1]!,
    cue: 'vertical = CAPTURE',
    expect: { thrust: 'GOVERN', lateral: 'same', vertical: 'RATE-UP', armed: ['ALT'] },
  };
  const forA = { ...fixture, effectivity: { type: 'TN-182', standards: ['A'], note: '' }, steps: [first!, read] };
  const forB = { ...forA, effectivity: { ...forA.effectivity, standards: ['A', 'B'] } };
  const wrong = (procedure: Procedure) => check(procedure).filter(({ check: id }) => id === 'wrong-words-expected');
  expect(wrong(forA)).toEqual([]);
  const [found] = wrong(forB);
  expect(found!.message).toContain('on standard B it shows GOVERN');
  expect(found!.witness).toMatchObject({ kind: 'path', standards: ['B'] });
});

test('a path goes from line to line by rules of the table', () => {
  const [found] = check(levelOff()).filter((finding) => finding.check === 'knob-kills-capture');
  if (found?.witness.kind !== 'path') throw new Error('a path was wanted');
  const { steps } = found.witness;
  for (const [k, move] of steps.entries()) {
    const before = steps[k - 1];
    const rule = tn182.modes.rules.find(({ id }) => move.does.startsWith(`${id} `));
    const same =
      before !== undefined && JSON.stringify({ ...before, does: '' }) === JSON.stringify({ ...move, does: '' });
    if (k > 0) expect(rule !== undefined || same, move.does).toBe(true);
  }
});
