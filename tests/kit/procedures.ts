// Any procedure at all, for laws: not sensible ones, but every shape that the type allows.
import fc from 'fast-check';
import {
  type Branch,
  CLASSES,
  FLAGS,
  PHASES,
  type Procedure,
  type ProcedureId,
  type Range,
  ROLES,
  type StateLine,
  type Step,
  type StepId,
  VERBS,
} from '../../lib/procedure/procedure.ts';

/** Words of the trade, and text that breaks careless writers: quotes, colons, line ends, marks, other scripts. */
export const anyText = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.constantFrom('', 'F6', 'speed <= VFE F6 - 5 kt', '"six"', "captain's hand", '250 kt', 'on', '12'),
  },
  { weight: 2, arbitrary: fc.string({ unit: 'grapheme', maxLength: 40 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      'null',
      '~',
      'same',
      '- a',
      'a: b',
      '# c',
      ' x ',
      'a\nb',
      'a\n\n b\n',
      '\ta',
      '{',
      '...',
      '\r\n',
      '\u2028',
      '__proto__',
    ),
  },
);

const idText = fc.stringMatching(/^[a-z0-9_-]{1,12}$/);
const words = fc.array(anyText, { maxLength: 3 });
const mode = fc.oneof(fc.constantFrom('same', '', 'CLIMB'), words);
const armed = fc.oneof(
  fc.constant(null),
  fc.constant('same' as const),
  words,
  fc.record({ add: words, drop: words }, { requiredKeys: [] }),
);
const notice = fc.record({
  kind: fc.constantFrom('note' as const, 'caution' as const, 'warning' as const),
  text: anyText,
});
const role = fc.constantFrom('' as const, ...ROLES);
// Minus nought is no envelope's end: adding nought takes its sign away.
const figure = fc
  .oneof(fc.integer({ min: -99_999, max: 99_999 }), fc.double({ noNaN: true, noDefaultInfinity: true }))
  .map((value) => value + 0);
const range: fc.Arbitrary<Range | null> = fc.option(
  fc.tuple(figure, figure).map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) })),
  { nil: null },
);

export const anyStep: fc.Arbitrary<Step> = fc.record({
  id: idText.map((id) => id as StepId),
  label: anyText,
  copiedFrom: anyText,
  family: anyText,
  cue: anyText,
  only: anyText,
  orderBy: role,
  orderWords: anyText,
  who: role,
  verb: fc.constantFrom('' as const, ...VERBS),
  object: anyText,
  value: anyText,
  sayBy: role,
  say: anyText,
  replyBy: role,
  reply: anyText,
  replyAct: anyText,
  expect: fc.oneof(
    fc.constant({ thrust: 'same', lateral: 'same', vertical: 'same', armed: 'same' } as const),
    fc.record({ thrust: mode, lateral: mode, vertical: mode, armed }),
  ),
  expectNote: anyText,
  checkBy: anyText,
  checkSees: anyText,
  checkWithin: anyText,
  checkIfNot: anyText,
  before: fc.array(notice, { maxLength: 2 }),
  note: anyText,
  why: anyText,
  source: anyText,
  flags: fc.uniqueArray(fc.constantFrom(...FLAGS), { maxLength: 3 }),
  branch: fc.array(fc.record({ when: anyText, to: anyText }), { maxLength: 2 }),
});

const anyState: fc.Arbitrary<StateLine> = fc.record({
  flaps: words,
  gear: fc.constantFrom('up' as const, 'down' as const, '' as const),
  speed: anyText,
  autopilot: anyText,
  thrust: words,
  lateral: words,
  vertical: words,
  armed: fc.option(words, { nil: null }),
  selectedAltitude: anyText,
  also: anyText,
});

const anyBranch: fc.Arbitrary<Branch> = fc.record({
  id: idText,
  label: anyText,
  title: anyText,
  when: anyText,
  before: fc.array(notice, { maxLength: 2 }),
  steps: fc.array(anyStep, { maxLength: 2 }),
  joins: anyText,
  note: anyText,
});

/** Ids and labels are made to name one thing each, as in every procedure that is not broken. */
export const anyProcedure: fc.Arbitrary<Procedure> = fc
  .record({
    id: idText.map((id) => id as ProcedureId),
    title: anyText,
    class: fc.constantFrom('' as const, ...CLASSES),
    phases: fc.uniqueArray(fc.constantFrom(...PHASES), { maxLength: 3 }),
    effectivity: fc.record({ type: anyText, standards: words, note: anyText }),
    owner: anyText,
    envelope: fc.record({
      weight: range,
      elevation: range,
      temperature: range,
      wind: range,
      level: range,
      detents: words,
    }),
    weightLimit: anyText,
    entry: anyState,
    exit: anyState,
    leavesTo: words,
    steps: fc.array(anyStep, { maxLength: 4 }),
    branches: fc.array(anyBranch, { maxLength: 2 }),
    rationale: anyText,
  })
  .map((procedure) => {
    let count = 0;
    const named = <T extends { id: string; label: string }>(thing: T): T => {
      count += 1;
      return {
        ...thing,
        id: `${thing.id.slice(0, 8)}${count}`,
        label: thing.label === '' ? '' : `${thing.label}${count}`,
      };
    };
    return {
      ...procedure,
      steps: procedure.steps.map(named),
      branches: procedure.branches.map((branch) => ({ ...named(branch), steps: branch.steps.map(named) })),
    };
  });
