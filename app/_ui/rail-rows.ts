// From a procedure and a sheet to the rows of the band rail. Pure; the same in the draft, the review, the reader and print.
import type { Sheet } from '../../lib/aircraft/sheet.ts';
import { readSheet } from '../../lib/aircraft/sheet.ts';
import { type Expression, evaluate } from '../../lib/base/expression.ts';
import { bandAt, bandOver, type Band as Proof } from '../../lib/envelope/band.ts';
import { type Domain, domainOf } from '../../lib/envelope/domain.ts';
import { termExpression } from '../../lib/envelope/gate-terms.ts';
import type { Policy } from '../../lib/policy/policy.ts';
import { speedBounds } from '../../lib/procedure/cue.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { type StepState, walk } from '../../lib/procedure/walk.ts';
import { formatTonnes } from '../../lib/units/format.ts';
import type { Kilograms } from '../../lib/units/quantity.ts';
import { type RailRow, type Scale, scaleOf } from './rail-shape.ts';

export type Rail = { readonly rows: ReadonlyMap<string, RailRow>; readonly scale: Scale; readonly weight: string };
type Point = Readonly<Record<string, number>>;

/** The rail over the procedure's envelope and at one weight (kg; null: its middle). null without a sheet or a policy. */
export function railOf(
  procedure: Procedure,
  sheetContent: unknown,
  policy: Policy | null,
  weight: number | null,
): Rail | null {
  if (!policy || !sheetContent) return null;
  const sheet = readSheet(sheetContent);
  return sheet.ok ? railWith(procedure, sheet.value, policy, weight) : null;
}

export function railWith(procedure: Procedure, sheet: Sheet, policy: Policy, weight: number | null): Rail {
  const domain = domainOf(sheet, procedure.envelope);
  const span = domain.find((axis) => axis.name === 'weight')!;
  const kilograms = Math.min(span.to, Math.max(span.from, weight ?? (span.from + span.to) / 2));
  const at = pointIn(domain, kilograms);
  const rows = new Map(
    walk(procedure, sheet).map((state) => [state.step.id as string, rowOf(state, sheet, policy, domain, at)]),
  );
  return { rows, scale: scaleOf([...rows.values()]), weight: formatTonnes(kilograms as Kilograms) };
}

/** Standard day, no wind where the procedure allows it, the weight chosen. */
function pointIn(domain: Domain, weight: number): Point {
  const nearZero = (from: number, to: number) => Math.min(to, Math.max(from, 0));
  return Object.fromEntries(
    domain.map((axis) => [axis.name, axis.name === 'weight' ? weight : nearZero(axis.from, axis.to)]),
  );
}

function rowOf(state: StepState, sheet: Sheet, policy: Policy, domain: Domain, at: Point): RailRow {
  const { before } = state;
  const id = state.step.id as string;
  const none = (because: string): RailRow => ({
    id,
    all: null,
    one: null,
    target: null,
    lowName: '',
    highName: '',
    because,
  });
  if (!before.flapsKnown) return none('flap not said');
  const band = bandOver(
    sheet,
    policy,
    {
      flaps: before.indicated,
      phase: before.floor,
      gear: before.gear.includes('down') ? 'down' : 'up',
      left: before.selected[0],
    },
    domain,
  );
  if (!band) return none('no band in the sheet');
  const one = bandAt(band, at);
  return {
    id,
    all: band.overAll && { low: band.overAll.low.from, high: band.overAll.high.to },
    one: { low: one.low, high: one.high },
    target: targetOf(state, sheet, policy, at),
    lowName: one.lowName,
    highName: one.highName,
    because: '',
  };
}

/** The speed that the step waits for, else the target set before it. */
function targetOf(state: StepState, sheet: Sheet, policy: Policy, at: Point): number | null {
  for (const way of state.ways) {
    for (const bound of speedBounds(way)) {
      // A gear limit in the cue is a limit and no speed to aim at.
      if (bound.term.kind === 'speed' && bound.term.name.startsWith('VL')) continue;
      const value = knotsOf(termExpression(bound.term, { sheet, policy }), at);
      if (value !== null) return value;
    }
  }
  const { target } = state.before;
  return target.kind === 'expression' ? knotsOf(termExpression(target.term, { sheet, policy }), at) : null;
}

function knotsOf(term: ReturnType<typeof termExpression>, at: Point): number | null {
  if (!term.ok || term.value.unit !== 'kt') return null;
  const knots = evaluate(term.value.expression, at);
  return Number.isFinite(knots) ? knots : null;
}

/** Approved figures that a pilot typed, kt. */
export type Entered = Readonly<Partial<Record<'V2' | 'VREF', number>>>;
export type ReaderBand = {
  readonly low: number | null;
  readonly lowName: string;
  readonly high: number;
  readonly highName: string;
};

/**
 * A band as a line pilot may see it. Minimum manoeuvring and flap limit speeds come from the sheet at the weight typed;
 * an edge made of V2 or VREF is shown only from the approved figure that the pilot typed, and never computed.
 */
export function readerBand(proof: Proof, at: Point, entered: Entered): ReaderBand {
  const high = bandAt(proof, at);
  let low: { value: number | null; name: string } = { value: Number.NEGATIVE_INFINITY, name: '' };
  for (const edge of proof.lows) {
    const speed = /^(V2|VREF)\b/.exec(edge.name)?.[1] as keyof Entered | undefined;
    // The figure typed is for the detent planned today; the edge may name another, so the detent is left out.
    const name = speed ? edge.name.replace(/^(V2|VREF) \S+/, '$1') : edge.name;
    const value = speed ? approved(edge.name, entered[speed]) : evaluate(edge.expression as Expression, at);
    if (value === null) return { low: null, lowName: name, high: high.high, highName: high.highName };
    if (value > (low.value ?? 0)) low = { value, name };
  }
  return { low: low.value, lowName: low.name, high: high.high, highName: high.highName };
}

/** `V2 F12 + 10 kt` with V2 typed as 141 is 151. */
function approved(name: string, figure: number | undefined): number | null {
  if (figure === undefined) return null;
  const plus = /\+ (\d+(?:\.\d+)?) kt/.exec(name);
  return figure + (plus ? Number(plus[1]) : 0);
}
