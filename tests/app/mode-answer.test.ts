import { describe, expect, test } from 'vitest';
import * as Y from 'yjs';
import { fillExpect } from '../../app/(house)/desk/_draft/fill-expect.ts';
import { flyAsWritten, modeAnswer } from '../../app/(house)/desk/_draft/mode-answer.ts';
import { History } from '../../lib/document/history.ts';
import { readDraft } from '../../lib/document/read.ts';
import { newDraftDoc } from '../../lib/document/write.ts';
import { findStep } from '../../lib/procedure/locate.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { seedProcedure } from '../kit/seed.ts';
import { tn182 } from '../kit/world.ts';

const answerOf = (procedure: Procedure, label: string) => {
  const id = findStep(procedure, label)!.id;
  return modeAnswer(flyAsWritten(tn182.modes, procedure), procedure, id)!;
};
const written = seedProcedure('go-around');

/** The modes read out only after the radio call: by then the altitude may be captured. */
function readLate(): Procedure {
  const read = findStep(written, 'GA-03')!;
  const others = written.steps.filter((step) => step !== read);
  const behind = others.findIndex((step) => step.label === 'GA-10') + 1;
  return { ...written, steps: [...others.slice(0, behind), { ...read, cue: 'then' }, ...others.slice(behind)] };
}

describe('what the screen is told of a step', () => {
  test('one answer that both standards share stands once, and can be filled', () => {
    const { on, fill, setting, refused } = answerOf(written, 'GA-03');
    expect([on.length, on[0]!.standards, on[0]!.before.vertical, refused]).toEqual([1, ['A', 'B'], ['LIFT'], []]);
    expect(fill).toEqual({ expect: { thrust: 'same', lateral: 'same', vertical: 'same', armed: 'same' } });
    expect(setting).toContain('as written');
  });
  test('a step that several modes may meet shows each, as possible', () => {
    const vertical = answerOf(readLate(), 'GA-03').on.flatMap(({ before }) => before.vertical);
    expect(new Set(vertical)).toEqual(new Set(['CAPTURE', 'LEVEL', 'LIFT']));
  });
  test('where the standards differ, each has its own entry: a wheel turned in CAPTURE arms ALT on A alone', () => {
    const { on, fill } = answerOf(seedProcedure('climb-altitude-change'), 'CL-C1');
    expect(on.map(({ standards, after }) => [standards, after.vertical, after.armedPossible])).toEqual([
      [['A'], ['RATE-UP'], ['ALT']],
      [['B'], ['RATE-UP'], []],
    ]);
    expect(fill).toEqual({ because: 'what is armed after it is not the same in every case' });
  });
  test('what is not one answer is refused with the words in question', () => {
    const open = ['normal-take-off', 'weather-deviation', 'climb-altitude-change'].flatMap((name) => {
      const procedure = seedProcedure(name);
      const flights = flyAsWritten(tn182.modes, procedure);
      return procedure.steps.flatMap(({ id }) => {
        const { fill } = modeAnswer(flights, procedure, id)!;
        return 'because' in fill ? [fill.because] : [];
      });
    });
    expect(open.length).toBeGreaterThan(0);
    for (const because of open) expect(because).toMatch(/may be \w.* or |not the same in every case|no flight/);
  });
  test('a procedure that cannot be flown says why, and fills nothing', () => {
    const nowhere = { ...written, entry: { ...written.entry, vertical: ['NOSUCH'] } };
    const { on, refused, fill } = answerOf(nowhere, 'GA-03');
    expect([on, refused.length]).toEqual([[], 2]);
    expect('because' in fill && fill.because).toContain('could not be explored');
  });
  test('a step that is gone has no answer', () => {
    expect(modeAnswer(flyAsWritten(tn182.modes, written), written, 'gone')).toBeNull();
  });
});

test('filling writes the four fields, and one undo takes all of it back', () => {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, newDraftDoc(written));
  const hand = { words: {}, keys: {}, chance: () => 0.5, newId: () => 'n' };
  const history = new History(doc, hand);
  const { id, expect: stood } = findStep(written, 'GA-02')!;
  const now = () => findStep(readDraft(doc).procedure, id)!.expect;
  const filled = { thrust: 'CLIMB', lateral: 'same', vertical: 'LEVEL', armed: ['ALT'] };
  expect(stood).not.toEqual(filled);
  fillExpect(doc, hand, id, filled);
  expect(now()).toEqual(filled);
  history.undo();
  expect(now()).toEqual(stood);
  expect(history.canUndo).toBe(false);
});
