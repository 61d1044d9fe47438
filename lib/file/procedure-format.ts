// The procedure file as a schema: what may stand where. It reads like the page a pilot writes (do, say, reply, expect,
// check); procedure-file.ts turns it into the flat shape of lib/procedure and back.
import { z } from 'zod';
import { CLASSES, FLAGS, PHASES, ROLES, VERBS } from '../procedure/procedure.ts';
import { answersFormat } from './answer-file.ts';

/** Longest text of one field. Longer text is a document of its own. */
export const LONGEST_TEXT = 20_000;
/** Most steps of the main line or of one branch. */
export const MOST_STEPS = 1_000;

const text = z.string().max(LONGEST_TEXT);
const one = <const T extends readonly [string, ...string[]]>(words: T) => z.enum(words);
const role = one(ROLES);
const id = z
  .string()
  .regex(/^[A-Za-z0-9_-]{1,64}$/)
  .describe('Permanent and opaque: given once, never the position, never the label.');
/** One word or a list of words, of which any fits. */
const words = z.union([text, z.array(text)]);

const notice = z.strictObject({ kind: one(['note', 'caution', 'warning']), text });
const order = z.strictObject({ who: role.optional(), say: text.optional() });
const deed = z.strictObject({ verb: one(VERBS).optional(), object: text.optional(), value: text.optional() });
const reply = z.strictObject({ who: role.optional(), say: text.optional(), act: text.optional() });
const armed = z.union([
  z.literal('same'),
  z.array(text),
  z.strictObject({ add: z.array(text).optional(), drop: z.array(text).optional() }),
]);
const expect = z.union([
  z.literal('same'),
  z.strictObject({
    thrust: words.optional(),
    lateral: words.optional(),
    vertical: words.optional(),
    armed: armed.optional(),
  }),
]);
const check = z.strictObject({
  by: text.optional(),
  sees: text.optional(),
  within: text.optional(),
  'if-not': text.optional(),
});

export const stepFormat = z.strictObject({
  id,
  label: text.optional().describe('Such as TO-07: given when first signed, never reused.'),
  cue: text.optional().describe('When the step begins, in gate notation.'),
  only: text.optional().describe('A condition or effectivity under which the step exists at all.'),
  order: order.optional().describe('Who releases the action, with which words.'),
  before: z.array(notice).optional().describe('Read ahead of the step. Holds no actions.'),
  who: role.optional().describe('The one who acts.'),
  do: deed.optional(),
  say: text.optional(),
  'said-by': role.optional().describe('Who says it, where that is not the actor.'),
  reply: reply.optional(),
  expect: expect.optional().describe('The mode line after the step; `same`: no change.'),
  'expect-note': text.optional(),
  check: check.optional().describe('Who sees what, within which time, and what if not.'),
  note: text.optional(),
  why: text.optional(),
  source: text.optional(),
  flags: z.array(one(FLAGS)).optional(),
  branch: z.array(z.strictObject({ when: text, to: text })).optional(),
  'copied-from': text.optional(),
  family: text.optional().describe('Key that ties this step to its sisters in other procedures.'),
});

const state = z.strictObject({
  flaps: words.optional(),
  gear: one(['up', 'down']).optional(),
  speed: text.optional(),
  autopilot: text.optional(),
  thrust: words.optional(),
  lateral: words.optional(),
  vertical: words.optional(),
  armed: z.array(text).optional().describe('[] says that nothing is armed; left out says nothing.'),
  'selected-altitude': text.optional(),
  also: text.optional(),
});

const range = text.describe('FROM to TO with units, such as 46 t to 78.6 t, ISA-40 °C to ISA+35 °C, FL 60 to FL 390.');

export const branchFormat = z.strictObject({
  id,
  label: text.optional(),
  title: text.optional(),
  when: text.optional().describe('When the branch is taken, in gate notation.'),
  before: z.array(notice).optional(),
  steps: z.array(stepFormat).max(MOST_STEPS),
  joins: text.optional().describe('Label of the step where it joins again, or words.'),
  note: text.optional(),
});

export const procedureFormat = z.strictObject({
  format: z.literal('cuewright-procedure/1'),
  id,
  title: text,
  class: one(CLASSES).optional(),
  phases: z.array(one(PHASES)).optional(),
  effectivity: z
    .strictObject({ type: text.optional(), standards: z.array(text).optional(), note: text.optional() })
    .optional(),
  owner: text.optional(),
  envelope: z
    .strictObject({
      weight: range.optional(),
      elevation: range.optional(),
      temperature: range.optional(),
      wind: range.optional(),
      level: range.optional(),
      detents: z.array(text).optional(),
    })
    .optional(),
  'weight-limit': text.optional(),
  entry: state.optional(),
  exit: state.optional(),
  'leaves-to': z.array(text).optional(),
  steps: z.array(stepFormat).max(MOST_STEPS),
  branches: z.array(branchFormat).max(MOST_STEPS).optional(),
  rationale: text.optional().describe('Why in this order.'),
  answers: answersFormat.optional().describe('What was answered to findings, and which STOPs were waived.'),
});

export type ProcedureFormat = z.infer<typeof procedureFormat>;
export type StepFormat = z.infer<typeof stepFormat>;
export type BranchFormat = z.infer<typeof branchFormat>;
export type StateFormat = z.infer<typeof state>;
