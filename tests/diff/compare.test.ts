import fc from 'fast-check';
import { expect, describe as group, test } from 'vitest';
import { apply } from '../../lib/diff/apply.ts';
import { compare } from '../../lib/diff/compare.ts';
import { describe, namesOf, textOfExpect } from '../../lib/diff/describe.ts';
import { compareWords } from '../../lib/diff/words.ts';
import type { Branch, Procedure, ProcedureId, StateLine, Step, StepId } from '../../lib/procedure/procedure.ts';

const state: StateLine = {
  flaps: [],
  gear: '',
  speed: '',
  autopilot: '',
  thrust: [],
  lateral: [],
  vertical: [],
  armed: null,
  selectedAltitude: '',
  also: '',
};
const step = (id: string, more: Partial<Step> = {}): Step => ({
  id: id as StepId,
  label: id.toUpperCase(),
  copiedFrom: '',
  family: '',
  cue: 'then',
  only: '',
  orderBy: '',
  orderWords: '',
  who: 'PM',
  verb: 'read',
  object: 'mode line',
  value: '',
  sayBy: '',
  say: '',
  replyBy: '',
  reply: '',
  replyAct: '',
  expect: { thrust: 'same', lateral: 'same', vertical: 'same', armed: 'same' },
  expectNote: '',
  checkBy: '',
  checkSees: '',
  checkWithin: '',
  checkIfNot: '',
  before: [],
  note: '',
  why: '',
  source: '',
  flags: [],
  branch: [],
  ...more,
});
const procedure = (steps: readonly Step[], branches: readonly Branch[] = []): Procedure => ({
  id: 'p' as ProcedureId,
  title: 'Go-around',
  class: 'normal',
  phases: ['go-around'],
  effectivity: { type: 'TN-182', standards: ['A', 'B'], note: '' },
  owner: '',
  envelope: {
    weight: { from: 46_000, to: 66_800 },
    elevation: null,
    temperature: null,
    wind: null,
    level: null,
    detents: [],
  },
  weightLimit: '',
  entry: state,
  exit: state,
  leavesTo: [],
  steps,
  branches,
  rationale: '',
});
const branch = (id: string, steps: readonly Step[], more: Partial<Branch> = {}): Branch => ({
  id,
  label: '',
  title: id,
  when: '',
  before: [],
  steps,
  joins: '',
  note: '',
  ...more,
});

const anyProcedure: fc.Arbitrary<Procedure> = fc
  .record({
    ids: fc.shuffledSubarray(['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i', 'j']),
    homes: fc.array(fc.constantFrom('', 'x', 'y', 'z'), { minLength: 10, maxLength: 10 }),
    lines: fc.shuffledSubarray(['x', 'y', 'z']),
    words: fc.array(fc.constantFrom('', 'flap six', 'checked'), { minLength: 10, maxLength: 10 }),
    title: fc.constantFrom('Go-around', 'Go-around, all engines'),
    when: fc.constantFrom('', 'vertical = CAPTURE'),
  })
  .map(({ ids, homes, lines, words, title, when }) => {
    const home = (at: number) => (lines.includes(homes[at]!) ? homes[at]! : '');
    const of = (line: string) => ids.flatMap((id, at) => (home(at) === line ? [step(id, { say: words[at]! })] : []));
    return {
      ...procedure(
        of(''),
        lines.map((line) => branch(line, of(line), { when })),
      ),
      title,
    };
  });

group('laws of comparison', () => {
  test('nothing differs from itself', () => {
    fc.assert(
      fc.property(anyProcedure, (a) => compare(a, a).length === 0),
      { numRuns: 300 },
    );
  });
  test('the changes from a to b, applied to a, give b', () => {
    fc.assert(
      fc.property(anyProcedure, anyProcedure, (a, b) => {
        expect(apply(a, compare(a, b))).toEqual(b);
      }),
      { numRuns: 2_000 },
    );
  });
  test('the old and the new wording can be read back out of a redline', () => {
    const text = fc.array(fc.constantFrom('flap', 'six', 'speed', ' ', '  ', 'checked')).map((words) => words.join(''));
    fc.assert(
      fc.property(text, text, (a, b) => {
        const found = compareWords(a, b);
        expect(
          found
            .filter((piece) => piece.kind !== 'put')
            .map((piece) => piece.text)
            .join(''),
        ).toBe(a);
        expect(
          found
            .filter((piece) => piece.kind !== 'cut')
            .map((piece) => piece.text)
            .join(''),
        ).toBe(b);
      }),
    );
  });
});

group('a moved step is a move', () => {
  const before = procedure(['a', 'b', 'c', 'd'].map((id) => step(id)));
  test('one step carried to the end is one change, and says from where to where', () => {
    const after = procedure(['b', 'c', 'd', 'a'].map((id) => step(id)));
    const changes = compare(before, after);
    expect(changes).toHaveLength(1);
    expect(changes[0]).toMatchObject({ kind: 'moved', id: 'a', from: { after: '' }, to: { after: 'd' } });
    expect(describe(changes[0]!, namesOf(before, after))).toBe('Moved: stood first, now after D');
  });
  test('moved and reworded is a move and a wording, not a removal', () => {
    const after = procedure([step('b'), step('a', { say: 'lift' }), step('c'), step('d')]);
    expect(compare(before, after).map((change) => change.kind)).toEqual(['moved', 'field']);
  });
  test('a step carried into a branch is a move', () => {
    const after = procedure([step('a'), step('b'), step('c')], [branch('x', [step('d')])]);
    expect(compare(before, after).map((change) => change.kind)).toEqual(['branch-added', 'moved']);
  });
});

group('words', () => {
  test('expected modes read in the order thrust, lateral, vertical, armed', () => {
    expect(textOfExpect({ thrust: 'CLIMB', lateral: ['ROUTE', 'HEADING'], vertical: 'ASCENT', armed: ['ALT'] })).toBe(
      'CLIMB / ROUTE or HEADING / ASCENT, ALT armed',
    );
  });
  test('a changed actor is told as who acts', () => {
    const changes = compare(procedure([step('a')]), procedure([step('a', { who: 'PF' })]));
    expect(changes[0]).toMatchObject({ meaning: 'who' });
    expect(describe(changes[0]!, (id) => id)).toBe('who acts: “PM” is now “PF”');
  });
});
