// Who may do what. Asked in the transaction that acts; screens get its answers as booleans, never a role.
import { type ProblemCode, Refused } from './errors.ts';
import type { Role } from './roles.ts';

const WRITERS: readonly Role[] = ['technical pilot'];
const READERS: readonly Role[] = ['technical pilot', 'training captain', 'standards captain', 'auditor'];
const PILOTS: readonly Role[] = ['technical pilot', 'training captain', 'standards captain', 'approver', 'line pilot'];
const ALL: readonly Role[] = [...PILOTS, 'auditor', 'administrator'];

const ACTS = {
  'read drafts': READERS,
  write: WRITERS,
  'answer finding': WRITERS,
  'waive finding': ['standards captain'],
  'read candidates': [...READERS, 'approver'],
  withdraw: WRITERS,
  'keep flight': ['technical pilot', 'standards captain'],
  review: ['standards captain'],
  sign: ['approver'],
  'read in force': ALL,
  acknowledge: PILOTS,
  'read record': ['auditor', 'approver', 'standards captain'],
  'manage people': ['administrator'],
  'manage fleet': ['administrator'],
  'manage policy': ['administrator', 'standards captain'],
  'import sheet': ['technical pilot', 'administrator'],
  'manage library': ['technical pilot', 'administrator'],
} as const satisfies Record<string, readonly Role[]>;

export type Act = keyof typeof ACTS;

/** Who had a hand in the text that an act is about. */
export type Hands = {
  readonly editors: readonly string[];
  readonly reviewers: readonly string[];
  readonly waivers: readonly string[];
};
export const NO_HANDS: Hands = { editors: [], reviewers: [], waivers: [] };

export type Standing = {
  readonly operatorId: string;
  readonly personId: string;
  readonly roles: readonly Role[];
  /** The time of this transaction, by the one clock. */
  readonly at: Date;
};

/** Why not, or null. Drafter, reviewer and approver of one text are three people; nobody waives their own STOP. */
export function objection(standing: Pick<Standing, 'personId' | 'roles'>, act: Act, hands: Hands): ProblemCode | null {
  const roles: readonly Role[] = ACTS[act];
  if (!standing.roles.some((role) => roles.includes(role))) return 'not-permitted';
  const in_ = (people: readonly string[]) => people.includes(standing.personId);
  if ((act === 'waive finding' || act === 'review' || act === 'sign') && in_(hands.editors))
    return 'same-person-edited';
  if (act === 'sign' && in_(hands.reviewers)) return 'same-person-reviewed';
  if (act === 'sign' && in_(hands.waivers)) return 'same-person-waived';
  return null;
}

export const may = (standing: Pick<Standing, 'personId' | 'roles'>, act: Act, hands: Hands = NO_HANDS): boolean =>
  objection(standing, act, hands) === null;

/** Refuses, which undoes the transaction. */
export function permit(standing: Standing, act: Act, hands: Hands = NO_HANDS): void {
  const why = objection(standing, act, hands);
  if (why) throw new Refused(why);
}
