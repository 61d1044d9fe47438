// A change is told by its meaning: which step, which field, moved from where to where. Steps are matched by their permanent
// id, so a moved step is a move and never "deleted here, new there". This folder compares content; it knows no approval.
import type { Branch, Procedure, Step } from '../procedure/procedure.ts';

/** Where a step stands: in the main line ('' ) or a branch, right behind another step ('' = first). */
export type Position = { readonly parent: string; readonly after: string };

/** What kind of thing a reader must look at. Ordered by how much it can hurt. */
export const MEANINGS = [
  'order',
  'who',
  'cue',
  'value',
  'modes',
  'words',
  'verification',
  'state',
  'notice',
  'background',
] as const;
export type Meaning = (typeof MEANINGS)[number];

export type StepField = Exclude<keyof Step, 'id'>;
export type BranchField = Exclude<keyof Branch, 'id' | 'steps'>;
export type ProcedureField = Exclude<keyof Procedure, 'id' | 'steps' | 'branches'>;

export type Change =
  | { readonly kind: 'added'; readonly step: Step; readonly to: Position }
  | { readonly kind: 'removed'; readonly step: Step; readonly from: Position }
  | {
      readonly kind: 'moved';
      readonly id: string;
      readonly label: string;
      readonly from: Position;
      readonly to: Position;
    }
  | {
      readonly kind: 'field';
      readonly id: string;
      readonly label: string;
      readonly field: StepField;
      readonly meaning: Meaning;
      readonly before: unknown;
      readonly after: unknown;
    }
  | { readonly kind: 'branch-added'; readonly branch: Branch; readonly after: string }
  | { readonly kind: 'branch-removed'; readonly branch: Branch; readonly after: string }
  | { readonly kind: 'branch-moved'; readonly id: string; readonly label: string; readonly after: string }
  | {
      readonly kind: 'branch-field';
      readonly id: string;
      readonly label: string;
      readonly field: BranchField;
      readonly meaning: Meaning;
      readonly before: unknown;
      readonly after: unknown;
    }
  | {
      readonly kind: 'procedure-field';
      readonly field: ProcedureField;
      readonly meaning: Meaning;
      readonly before: unknown;
      readonly after: unknown;
    };

const STEP_MEANING: Record<StepField, Meaning> = {
  label: 'background',
  copiedFrom: 'background',
  family: 'background',
  cue: 'cue',
  only: 'cue',
  orderBy: 'who',
  orderWords: 'words',
  who: 'who',
  verb: 'value',
  object: 'value',
  value: 'value',
  sayBy: 'who',
  say: 'words',
  replyBy: 'who',
  reply: 'words',
  replyAct: 'words',
  expect: 'modes',
  expectNote: 'modes',
  checkBy: 'verification',
  checkSees: 'verification',
  checkWithin: 'verification',
  checkIfNot: 'verification',
  before: 'notice',
  note: 'notice',
  why: 'background',
  source: 'background',
  flags: 'verification',
  branch: 'order',
};
export const STEP_FIELDS = Object.keys(STEP_MEANING) as StepField[];
export const meaningOfStepField = (field: StepField): Meaning => STEP_MEANING[field];

const BRANCH_MEANING: Record<BranchField, Meaning> = {
  label: 'background',
  title: 'words',
  when: 'cue',
  before: 'notice',
  joins: 'order',
  note: 'notice',
};
export const BRANCH_FIELDS = Object.keys(BRANCH_MEANING) as BranchField[];
export const meaningOfBranchField = (field: BranchField): Meaning => BRANCH_MEANING[field];

const PROCEDURE_MEANING: Record<ProcedureField, Meaning> = {
  title: 'words',
  class: 'state',
  phases: 'state',
  effectivity: 'state',
  owner: 'background',
  envelope: 'state',
  weightLimit: 'state',
  entry: 'state',
  exit: 'state',
  leavesTo: 'order',
  rationale: 'background',
};
export const PROCEDURE_FIELDS = Object.keys(PROCEDURE_MEANING) as ProcedureField[];
export const meaningOfProcedureField = (field: ProcedureField): Meaning => PROCEDURE_MEANING[field];
