// Whole procedures at random, in the one shape that everything reads.
import fc from 'fast-check';
import { plainForm } from '../../lib/document/notice-text.ts';
import {
  type Branch,
  CLASSES,
  FLAGS,
  type Notice,
  PHASES,
  type Procedure,
  type ProcedureId,
  ROLES,
  type StateLine,
  type Step,
  type StepId,
  VERBS,
} from '../../lib/procedure/procedure.ts';

const text = fc.string({ unit: 'grapheme', maxLength: 40 });
const word = fc.constantFrom('CLIMB', 'LIFT', 'ROUTE', 'TRACK', 'CAPTURE');
const words = fc.array(word, { maxLength: 3 });
const role = fc.constantFrom('' as const, ...ROLES);
const noticeWords = fc.array(fc.constantFrom('**', '_', '*', 'not below', ' ', 'VFE', 'flap'), { maxLength: 12 });
const notice: fc.Arbitrary<Notice> = fc.record({
  kind: fc.constantFrom('note' as const, 'caution' as const, 'warning' as const),
  text: fc
    .oneof(
      text,
      noticeWords.map((parts) => parts.join('')),
    )
    .map(plainForm),
});
const mode = fc.oneof(fc.constant('same'), fc.constant(''), word, words);
const armed = fc.oneof(
  fc.constant(null),
  fc.constant('same' as const),
  words,
  fc.record({ add: words, drop: words }, { requiredKeys: [], noNullPrototype: true }),
);

const step: fc.Arbitrary<Step> = fc.record({
  id: fc.uuid().map((id) => id as StepId),
  label: fc.constantFrom('', 'GA-07'),
  copiedFrom: fc.constantFrom('', 'another'),
  family: fc.constantFrom('', 'family'),
  cue: text,
  only: text,
  orderBy: role,
  orderWords: text,
  who: role,
  verb: fc.constantFrom('' as const, ...VERBS),
  object: text,
  value: text,
  sayBy: role,
  say: text,
  replyBy: role,
  reply: text,
  replyAct: text,
  expect: fc.record({ thrust: mode, lateral: mode, vertical: mode, armed }),
  expectNote: text,
  checkBy: role,
  checkSees: text,
  checkWithin: text,
  checkIfNot: text,
  before: fc.array(notice, { maxLength: 3 }),
  note: text,
  why: text,
  source: text,
  flags: fc.subarray([...FLAGS]),
  branch: fc.array(fc.record({ when: text, to: text }), { maxLength: 2 }),
});

const steps = fc.uniqueArray(step, { maxLength: 8, selector: (one) => one.id });
const branch: fc.Arbitrary<Branch> = fc.record({
  id: fc.uuid(),
  label: text,
  title: text,
  when: text,
  before: fc.array(notice, { maxLength: 2 }),
  steps,
  joins: text,
  note: text,
});

const stateLine: fc.Arbitrary<StateLine> = fc.record({
  flaps: words,
  gear: fc.constantFrom('up' as const, 'down' as const, '' as const),
  speed: text,
  autopilot: text,
  thrust: words,
  lateral: words,
  vertical: words,
  armed: fc.option(words),
  selectedAltitude: text,
  also: text,
});
const range = fc.option(fc.tuple(fc.integer(), fc.nat()).map(([from, more]) => ({ from, to: from + more })));

export const procedure: fc.Arbitrary<Procedure> = fc.record({
  id: fc.uuid().map((id) => id as ProcedureId),
  title: text,
  class: fc.constantFrom('' as const, ...CLASSES),
  phases: fc.subarray([...PHASES]),
  effectivity: fc.record({ type: text, standards: words, note: text }),
  owner: text,
  envelope: fc.record({
    weight: range,
    elevation: range,
    temperature: range,
    wind: range,
    level: range,
    detents: words,
  }),
  weightLimit: text,
  entry: stateLine,
  exit: stateLine,
  leavesTo: words,
  steps,
  branches: fc.uniqueArray(branch, { maxLength: 3, selector: (one) => one.id }),
  rationale: text,
});

/** One of them, always the same for a seed. */
export const someProcedure = (seed: number): Procedure => fc.sample(procedure, { seed, numRuns: 1 })[0]!;
