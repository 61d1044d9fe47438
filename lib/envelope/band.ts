import { detentLimit } from '../aircraft/limits.ts';
import { speedExpression } from '../aircraft/schedule.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import { type Expression, evaluate, max, min, number } from '../base/expression.ts';
import type { Domain, Span } from './domain.ts';
import { type Floor, type FloorPhase, type Floors, floorOf } from './floor.ts';
import { extentOf } from './prove.ts';
import { difference } from './simplify.ts';

/** What of the operator's policy a band needs; the policy itself fits. */
export type BandPolicy = { readonly floors: Floors };

export type BandQuestion = {
  /** Every detent that may be indicated. */
  readonly flaps: readonly string[];
  readonly phase: FloorPhase;
  /** 'down' also while it travels or may be down. */
  readonly gear: 'up' | 'down';
  /** Go-around, first retraction: the detent left. */
  readonly left?: string;
};

export type Edge = { readonly name: string; readonly expression: Expression };

/** kt throughout. `lows` and `highs`: every edge that holds, the band lies inside all of them. */
export type Band = {
  readonly low: Expression;
  readonly high: Expression;
  readonly lows: readonly Edge[];
  readonly highs: readonly Edge[];
  /** Over the whole domain: where each side moves, and the narrowest band with its place; null where a table ends. */
  readonly overAll: {
    readonly low: Span;
    readonly high: Span;
    readonly narrowest: { readonly width: number; readonly at: Readonly<Record<string, number>> };
  } | null;
  /** Named after the edge that binds at the heaviest weight. */
  readonly lowName: string;
  readonly highName: string;
};

/**
 * The usable band of a moment: the floor by phase below, the limit of every flap that may be indicated, of the extended
 * gear and of the aircraft above. null when the sheet has none of the detents, or no lowest speed for them.
 */
export function bandOver(sheet: Sheet, policy: BandPolicy, question: BandQuestion, domain: Domain): Band | null {
  const lows = question.flaps.flatMap((detent) => {
    const floor: Floor | null = floorOf(sheet, policy.floors, question.phase, detent, question.left ?? null);
    return floor === null ? [] : [floor];
  });
  const highs = highEdges(sheet, question);
  if (lows.length === 0 || highs.length === 0) return null;
  const low = lows.map((edge) => edge.expression).reduce(max);
  const high = highs.map((edge) => edge.expression).reduce(min);
  const lowest = extentOf(low, domain);
  const highest = extentOf(high, domain);
  const width = extentOf(difference(high, low), domain);
  const heaviest = Object.fromEntries(domain.map((one) => [one.name, one.to]));
  return {
    low,
    high,
    lows,
    highs,
    lowName: binding(lows, heaviest, 'highest').name,
    highName: binding(highs, heaviest, 'lowest').name,
    overAll:
      lowest && highest && width
        ? {
            low: { from: lowest.least.value, to: lowest.greatest.value },
            high: { from: highest.least.value, to: highest.greatest.value },
            narrowest: { width: width.least.value, at: width.least.at },
          }
        : null,
  };
}

/** The band at one point, kt, with the name of the edge that binds there. */
export function bandAt(
  band: Band,
  at: Readonly<Record<string, number>>,
): {
  readonly low: number;
  readonly high: number;
  readonly lowName: string;
  readonly highName: string;
} {
  const low = binding(band.lows, at, 'highest');
  const high = binding(band.highs, at, 'lowest');
  return {
    low: evaluate(low.expression, at),
    high: evaluate(high.expression, at),
    lowName: low.name,
    highName: high.name,
  };
}

function binding(edges: readonly Edge[], at: Readonly<Record<string, number>>, which: 'highest' | 'lowest'): Edge {
  const sign = which === 'highest' ? 1 : -1;
  return edges.reduce((best, edge) =>
    sign * (evaluate(edge.expression, at) - evaluate(best.expression, at)) > 0 ? edge : best,
  );
}

function highEdges(sheet: Sheet, { flaps, gear }: BandQuestion): readonly Edge[] {
  const limits = flaps.flatMap((detent) => {
    const expression = speedExpression(sheet, { name: 'VFE', detent, icing: false });
    return expression === null ? [] : [{ name: `VFE ${detent}`, expression }];
  });
  if (flaps.every((detent) => detentLimit(sheet, detent) === null)) return [];
  const vle = gear === 'down' ? [{ name: 'VLE', expression: number(sheet.limits.gear.vle.value) }] : [];
  return [...limits, ...vle, { name: 'VMO', expression: number(sheet.limits.vmo.value) }];
}
