// The waist of the house: one shape of a procedure, which every engine reads. Folders document and file make it; nothing
// here knows where it came from. It is plain data: frozen, comparable, and the same in browser, server and command line.
import type { Brand } from '../base/brand.ts';

/** Opaque, given once, for life. Never the position, never the label. */
export type StepId = Brand<string, 'StepId'>;
export type ProcedureId = Brand<string, 'ProcedureId'>;

export const ROLES = ['PF', 'PM', 'captain', 'first officer', 'each', 'cabin crew', 'ground crew'] as const;
export type Role = (typeof ROLES)[number];

export const VERBS = [
  'set',
  'select',
  'press',
  'move',
  'arm',
  'engage',
  'disengage',
  'check',
  'call',
  'respond',
  'read',
  'brief',
  'request',
  'monitor',
  'guard',
  'wait-for',
  'decide',
] as const;
export type Verb = (typeof VERBS)[number];

export const FLAGS = [
  'critical',
  'memory',
  'irreversible',
  'interruptible',
  'hold',
  'speech',
  'eyes-down',
  'altitude-critical',
] as const;
export type Flag = (typeof FLAGS)[number];

export const CLASSES = [
  'normal',
  'supplementary normal',
  'non-normal',
  'memory',
  'low-visibility',
  'ground',
  'cold-weather',
  'engine-out',
] as const;
export type ProcedureClass = (typeof CLASSES)[number];

export const PHASES = [
  'preflight',
  'start',
  'taxi',
  'take-off',
  'initial climb',
  'climb',
  'cruise',
  'descent',
  'approach',
  'landing',
  'go-around',
  'after landing',
  'parking',
  'holding',
] as const;
export type Phase = (typeof PHASES)[number];

/** One axis of the expected mode line: `same`, one word, or any of several. Empty string: not stated. */
export type ExpectedMode = 'same' | '' | string | readonly string[];
/** Armed words: the whole list, or what is added and dropped; `same`: no change. null: not stated. */
export type ExpectedArmed =
  | 'same'
  | readonly string[]
  | { readonly add?: readonly string[]; readonly drop?: readonly string[] }
  | null;
export type Expect = {
  readonly thrust: ExpectedMode;
  readonly lateral: ExpectedMode;
  readonly vertical: ExpectedMode;
  readonly armed: ExpectedArmed;
};

export type Notice = { readonly kind: 'note' | 'caution' | 'warning'; readonly text: string };

/** A step, flat: every field is one key of the stored draft, one cell of the screen, one line of a comparison.
 *  An empty string means "not stated". `cue` is gate notation. */
export type Step = {
  readonly id: StepId;
  /** Such as `GA-07`: given when first signed, never reused; '' before that. */
  readonly label: string;
  readonly copiedFrom: string;
  readonly family: string;
  readonly cue: string;
  /** A condition or effectivity under which the step exists at all, in words; '' = always. */
  readonly only: string;
  readonly orderBy: Role | '';
  readonly orderWords: string;
  readonly who: Role | '';
  readonly verb: Verb | '';
  readonly object: string;
  readonly value: string;
  /** Who says `say`; '' means the actor. */
  readonly sayBy: Role | '';
  readonly say: string;
  readonly replyBy: Role | '';
  readonly reply: string;
  /** Where the answer is an act and not a word. */
  readonly replyAct: string;
  readonly expect: Expect;
  readonly expectNote: string;
  readonly checkBy: string;
  readonly checkSees: string;
  readonly checkWithin: string;
  readonly checkIfNot: string;
  /** Read before the step: notes, cautions, warnings. `**strong**` and `_emphasis_` are the only marks. */
  readonly before: readonly Notice[];
  readonly note: string;
  readonly why: string;
  readonly source: string;
  readonly flags: readonly Flag[];
  /** Where the step sends the reader: condition -> label or name. */
  readonly branch: readonly { readonly when: string; readonly to: string }[];
};

/** The state a procedure starts from, or promises at its end (check 22). Lists mean "one of". '' and [] = not stated. */
export type StateLine = {
  readonly flaps: readonly string[];
  readonly gear: 'up' | 'down' | '';
  readonly speed: string;
  readonly autopilot: string;
  readonly thrust: readonly string[];
  readonly lateral: readonly string[];
  readonly vertical: readonly string[];
  /** null = not stated; [] = nothing armed, said explicitly. */
  readonly armed: readonly string[] | null;
  readonly selectedAltitude: string;
  readonly also: string;
};

export type Range = { readonly from: number; readonly to: number };
/** The ranges over which the procedure is meant to hold. Weight kg; elevation ft; temperature °C from standard; wind kt
 *  along the runway or track, head wind positive; level ft pressure altitude. null = not limited, the sheet's own range. */
export type Envelope = {
  readonly weight: Range | null;
  readonly elevation: Range | null;
  readonly temperature: Range | null;
  readonly wind: Range | null;
  readonly level: Range | null;
  readonly detents: readonly string[];
};

/** Tails by options: every list that is not empty must contain the tail's option. */
export type Effectivity = { readonly type: string; readonly standards: readonly string[]; readonly note: string };

export type Branch = {
  readonly id: string;
  readonly label: string;
  readonly title: string;
  readonly when: string;
  readonly before: readonly Notice[];
  readonly steps: readonly Step[];
  /** Label of the step where it joins again, or words. */
  readonly joins: string;
  readonly note: string;
};

export type Procedure = {
  readonly id: ProcedureId;
  readonly title: string;
  readonly class: ProcedureClass | '';
  readonly phases: readonly Phase[];
  readonly effectivity: Effectivity;
  readonly owner: string;
  readonly envelope: Envelope;
  readonly weightLimit: string;
  readonly entry: StateLine;
  readonly exit: StateLine;
  readonly leavesTo: readonly string[];
  readonly steps: readonly Step[];
  readonly branches: readonly Branch[];
  readonly rationale: string;
};

/** All steps in reading order, those of branches after the main line. */
export function allSteps(procedure: Procedure): readonly Step[] {
  return [...procedure.steps, ...procedure.branches.flatMap((branch) => branch.steps)];
}
