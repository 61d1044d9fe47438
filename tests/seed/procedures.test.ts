import { describe, expect, test } from 'vitest';
import { wordsOf } from '../../lib/aircraft/mode-set.ts';
import { readProcedureFile, writeProcedureFile } from '../../lib/file/procedure-file.ts';
import { parseGate } from '../../lib/gate/parse.ts';
import { variablesOf } from '../../lib/gate/variables.ts';
import { allSteps, type Procedure } from '../../lib/procedure/procedure.ts';
import { procedureNames, seedLibrary, seedProcedure, seedSheet, seedText } from '../kit/seed.ts';

const names = procedureNames();
const procedures = names.map(seedProcedure);
const sheet = seedSheet();
const words = wordsOf(sheet.modes);

/** Every gate of a procedure with the place where it stands. */
function gatesOf(procedure: Procedure): readonly { at: string; text: string }[] {
  return [
    ...allSteps(procedure).flatMap((step) => [
      { at: `${step.label} cue`, text: step.cue },
      ...step.branch.map((way) => ({ at: `${step.label} branch`, text: way.when })),
    ]),
    ...procedure.branches.map((branch) => ({ at: branch.label, text: branch.when })),
  ];
}

test('eight whole procedures, the four of the reference among them', () => {
  expect(names).toEqual([
    'climb-altitude-change',
    'direct-to',
    'engine-out-take-off',
    'go-around',
    'holding',
    'instrument-approach',
    'normal-take-off',
    'weather-deviation',
  ]);
});

test('ids are opaque, and given once in the whole library', () => {
  const ids = procedures.flatMap((p) => [p.id, ...p.branches.map((b) => b.id), ...allSteps(p).map((s) => s.id)]);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) expect(id).toMatch(/^(pr|br|st)_[a-z2-9]{6}$/);
  const labels = procedures.flatMap((p) => allSteps(p).map((s) => s.label));
  expect(new Set(labels).size).toBe(labels.length);
});

describe.each(procedures.map((procedure, i) => ({ name: names[i]!, procedure })))('$name', ({ name, procedure }) => {
  const steps = allSteps(procedure);

  test('stands in the repository as the program writes it', () => {
    const text = seedText(`procedures/${name}.yaml`);
    expect(writeProcedureFile(procedure)).toBe(text);
    expect(readProcedureFile(text, name)).toEqual({ ok: true, value: procedure });
  });

  test('is whole: 15 to 30 steps, each with cue, actor, deed, mode line and check', () => {
    expect(procedure.steps.length).toBeGreaterThanOrEqual(15);
    expect(procedure.steps.length).toBeLessThanOrEqual(30);
    for (const step of steps) {
      expect(step, step.label).toMatchObject({ label: expect.stringMatching(/^[A-Z]{2}-[A-Z]?\d+$/) });
      for (const field of ['cue', 'who', 'verb', 'object', 'checkBy', 'checkSees', 'checkIfNot'] as const) {
        expect(step[field], `${step.label} ${field}`).not.toBe('');
      }
      expect(step.expect.vertical, step.label).not.toBe('');
    }
  });

  test('every gate reads without a problem', () => {
    for (const { at, text } of gatesOf(procedure)) {
      expect(parseGate(text).problems.map((problem) => `${at}: ${problem.message}`)).toEqual([]);
    }
  });

  test('every mode word, detent and step that is named exists', () => {
    const labels = new Set([...steps, ...procedure.branches].map((thing) => thing.label));
    const detents = sheet.detents.map((detent) => detent.name);
    for (const { at, text } of gatesOf(procedure)) {
      const said = variablesOf(parseGate(text).gate!);
      for (const { axis, word } of said.modes) expect(words[axis], at).toContain(word);
      for (const word of said.armed) expect(words.armed, at).toContain(word);
      for (const detent of said.detents) expect(detents, at).toContain(detent);
      for (const step of said.steps) expect([...labels], at).toContain(step);
    }
    for (const step of steps) {
      for (const axis of ['thrust', 'lateral', 'vertical'] as const) {
        for (const word of [step.expect[axis]].flat()) expect(['same', ...words[axis]], step.label).toContain(word);
      }
      const { armed } = step.expect;
      const all =
        armed === null || typeof armed === 'string' ? [] : 'length' in armed ? armed : [armed.add, armed.drop].flat();
      for (const word of all) expect([undefined, ...words.armed], step.label).toContain(word);
    }
  });

  test('whatever a cue waits to hear is said by somebody, or stands in the callout dictionary', () => {
    const said = new Set([
      ...seedLibrary().callouts.flatMap((callout) => [callout.words, callout.reply]),
      ...sheet.callouts.map((callout) => callout.words),
      ...steps.flatMap((step) => [step.say, step.reply, step.orderWords]),
    ]);
    for (const { at, text } of gatesOf(procedure)) {
      for (const heard of variablesOf(parseGate(text).gate!).heard) expect([...said], at).toContain(heard);
    }
  });

  test('no step answers itself, and no notice tells somebody to act', () => {
    for (const step of steps) {
      if (step.reply !== '') expect(step.replyBy, step.label).not.toBe(step.sayBy || (step.say === '' ? '' : step.who));
      for (const notice of step.before) {
        expect(notice.text, step.label).not.toMatch(/^(Set|Select|Press|Move|Check|Call|Read|Do not|Turn|Ask|Say)\b/);
      }
    }
  });

  test('branches lead somewhere', () => {
    const there = [...steps, ...procedure.branches].map((thing) => thing.label);
    for (const branch of procedure.branches) {
      const named = branch.joins.match(/\b[A-Z]{2}-[A-Z]?\d+\b/g) ?? [];
      expect(named.length, branch.label).toBeGreaterThan(0);
      const elsewhere = branch.joins.startsWith('procedure ');
      for (const label of named) {
        if (!elsewhere) expect(there, branch.label).toContain(label);
      }
    }
  });
});
