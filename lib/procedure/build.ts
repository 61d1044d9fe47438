// Small builders with clean defaults: examples of checks, tests and trials say only what they are about. A step or a
// procedure made here states nothing that was not asked for, and its entry and exit are whole.
import type { Branch, Expect, Procedure, ProcedureId, StateLine, Step, StepId } from './procedure.ts';

const UNSTATED: Expect = { thrust: '', lateral: '', vertical: '', armed: null };

const BLANK: Step = {
  id: '' as StepId,
  label: '',
  copiedFrom: '',
  family: '',
  cue: '',
  only: '',
  orderBy: '',
  orderWords: '',
  who: '',
  verb: '',
  object: '',
  value: '',
  sayBy: '',
  say: '',
  replyBy: '',
  reply: '',
  replyAct: '',
  expect: UNSTATED,
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
};

const CRUISE: StateLine = {
  flaps: ['F0'],
  gear: 'up',
  speed: '250 kt',
  autopilot: 'on',
  thrust: ['GOVERN'],
  lateral: ['ROUTE'],
  vertical: ['LEVEL'],
  armed: [],
  selectedAltitude: 'cleared level',
  also: '',
};

export type StepParts = Partial<Omit<Step, 'id' | 'expect'>> & {
  readonly id?: string;
  readonly expect?: Partial<Expect>;
};
export type BranchParts = Partial<Omit<Branch, 'steps'>> & { readonly steps?: readonly StepParts[] };
export type StateParts = Partial<StateLine>;
export type ProcedureParts = Partial<Omit<Procedure, 'id' | 'steps' | 'branches' | 'entry' | 'exit' | 'envelope'>> & {
  readonly steps?: readonly StepParts[];
  readonly branches?: readonly BranchParts[];
  readonly entry?: StateParts;
  readonly exit?: StateParts;
  readonly envelope?: Partial<Procedure['envelope']>;
};

/** A step that states only what is given. Without an id it is called after its label, else `s1`, `s2`, … by `place`. */
export function stepWith(parts: StepParts, place = 1): Step {
  const id = (parts.id ?? (parts.label || `s${place}`)) as StepId;
  return { ...BLANK, ...parts, id, expect: { ...UNSTATED, ...parts.expect } };
}

/** A state line: level flight, clean, autopilot on, with what is given put over it. */
export function stateWith(parts: StateParts = {}): StateLine {
  return { ...CRUISE, ...parts };
}

export function branchWith(parts: BranchParts, place = 1): Branch {
  const steps = (parts.steps ?? []).map((step, index) => stepWith(step, place * 100 + index + 1));
  return { id: `b${place}`, label: '', title: '', when: '', before: [], joins: '', note: '', ...parts, steps };
}

/** A whole procedure around the steps given. */
export function procedureWith(parts: ProcedureParts): Procedure {
  return {
    title: 'Trial',
    class: 'normal',
    phases: ['cruise'],
    effectivity: { type: 'TN-182', standards: ['A', 'B'], note: '' },
    owner: 'Oona Reth',
    weightLimit: '',
    leavesTo: [],
    rationale: '',
    ...parts,
    id: 'trial' as ProcedureId,
    entry: stateWith(parts.entry),
    exit: stateWith(parts.exit),
    envelope: {
      weight: null,
      elevation: null,
      temperature: null,
      wind: null,
      level: null,
      detents: [],
      ...parts.envelope,
    },
    steps: (parts.steps ?? []).map((step, index) => stepWith(step, index + 1)),
    branches: (parts.branches ?? []).map((branch, index) => branchWith(branch, index + 1)),
  };
}
