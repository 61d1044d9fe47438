import { assert } from '../base/assert.ts';
import type { Expression } from '../base/expression.ts';
import { type Boundary, boundaryAlong } from './boundary.ts';
import { Bounds, type Box } from './bounds.ts';
import { type Condition, marginOf } from './condition.ts';
import type { Domain, Span } from './domain.ts';
import { type Least, leastOver } from './least.ts';
import { layOut } from './tape.ts';

/** A point of the domain, by the names of the variables that the condition speaks of. */
export type Point = Readonly<Record<string, number>>;

/**
 * `holds`: everywhere in the domain, surely. `least`: no margin in it is smaller.
 * `fails`: surely at `witness`, where the margin is `worst` and about the smallest of all; `from`: where it begins to fail.
 * `undecided`: within `tolerance` of the boundary in `box`, or not answerable there `because` of a named reason.
 * Margins are in the unit of the condition, negative where it fails.
 */
export type Proof =
  | { readonly verdict: 'holds'; readonly least: number }
  | { readonly verdict: 'fails'; readonly witness: Point; readonly worst: number; readonly from?: Boundary }
  | {
      readonly verdict: 'undecided';
      readonly box: Readonly<Record<string, Span>>;
      readonly tolerance: number;
      readonly because: string;
    };

export type ProveOptions = {
  /** Boxes to look into before giving up: the limit of one question. */
  readonly budget?: number;
  /** The variable along which the boundary is sought: weight, or the first one that the condition speaks of. */
  readonly along?: string;
  /** The verdict with any witness: no search for the worst one, none for the boundary. */
  readonly quick?: boolean;
};

/** About a tenth of a second for the longest formula of a sheet. */
export const BUDGET = 4_000;
/** Spent on making a witness the worst one, once the verdict is known; and how near to the worst is near enough. */
const REFINE = 200;
const NEAR = 1e-6;

/** Answers whether a condition holds over the whole domain. Throws when the domain lacks a variable of the condition. */
export function prove(condition: Condition, domain: Domain, options: ProveOptions = {}): Proof {
  const { margin, strict } = marginOf(condition);
  const { bounds, axes } = laidOut(margin, domain);
  const strictly = strict !== 'no';
  const quick = options.quick === true;
  const aim = {
    enough: 0,
    strictly,
    near: quick ? Infinity : NEAR,
    budget: options.budget ?? BUDGET,
    refine: quick ? 0 : REFINE,
  };
  const least = leastOver(bounds, boxOf(axes), aim);
  if (least.hi < 0 || (least.hi <= 0 && strict === 'yes')) {
    const along = quick ? null : (options.along ?? defaultAlong(axes));
    const from = along === null ? null : boundaryAlong(bounds, axes, along, strictly, least.at);
    const found = { verdict: 'fails' as const, witness: pointOf(axes, least.at), worst: least.hi };
    return from === null ? found : { ...found, from };
  }
  if (least.because === '' && (least.lo > 0 || (least.lo >= 0 && strict === 'no')))
    return { verdict: 'holds', least: least.lo };
  return undecided(axes, least);
}

/** The bounds of an expression, and its variables with their ranges in the order of the tape. */
function laidOut(expression: Expression, domain: Domain): { bounds: Bounds; axes: Domain } {
  const tape = layOut(expression);
  const axes = tape.variables.map((name) => {
    const found = domain.find((one) => one.name === name);
    assert(found !== undefined, `the domain says nothing of ${name}`);
    return found;
  });
  return { bounds: new Bounds(tape), axes };
}

function undecided(axes: Domain, least: Least): Proof {
  const box = Object.fromEntries(axes.map((one, i) => [one.name, { from: least.rest.lo[i]!, to: least.rest.hi[i]! }]));
  const tolerance = least.hi - least.lo;
  const because = least.because === '' ? 'the two sides come too near each other to be told apart' : least.because;
  return { verdict: 'undecided', box, tolerance, because };
}

/** The least and the greatest value of an expression over a domain, each with a place; null where it has no value. */
export type Extent = {
  readonly least: { readonly value: number; readonly at: Point };
  readonly greatest: { readonly value: number; readonly at: Point };
};

export function extentOf(expression: Expression, domain: Domain): Extent | null {
  const least = extreme(expression, domain);
  const greatest = extreme({ kind: 'sub', left: { kind: 'number', value: 0 }, right: expression }, domain);
  if (least === null || greatest === null) return null;
  return { least, greatest: { value: greatest.value === 0 ? 0 : -greatest.value, at: greatest.at } };
}

function extreme(expression: Expression, domain: Domain): { value: number; at: Point } | null {
  const { bounds, axes } = laidOut(expression, domain);
  const found = leastOver(bounds, boxOf(axes), {
    enough: Infinity,
    strictly: true,
    near: NEAR,
    budget: BUDGET,
    refine: BUDGET,
  });
  if (found.because !== '' || !Number.isFinite(found.hi)) return null;
  return { value: found.hi, at: pointOf(axes, found.at) };
}

const boxOf = (axes: Domain): Box => ({ lo: axes.map((one) => one.from), hi: axes.map((one) => one.to) });

const pointOf = (axes: Domain, at: readonly number[]): Point =>
  Object.fromEntries(axes.map((one, i) => [one.name, at[i]!]));

function defaultAlong(axes: Domain): string | null {
  const weight = axes.find((one) => one.name === 'weight');
  return (weight ?? axes.find((one) => one.from < one.to))?.name ?? null;
}
