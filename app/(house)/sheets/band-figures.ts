// The band of each detent by weight: VMM below, its limit above, and what is left of it below the limit of the next
// detent. Sampled to be drawn; what holds over all weights is proven in lib/envelope and said in words.
import { detentLimit } from '../../../lib/aircraft/limits.ts';
import { speedAt, speedExpression } from '../../../lib/aircraft/schedule.ts';
import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { number, sub } from '../../../lib/base/expression.ts';
import type { Compare } from '../../../lib/envelope/condition.ts';
import { domainOf } from '../../../lib/envelope/domain.ts';
import { explain } from '../../../lib/envelope/explain.ts';
import { prove } from '../../../lib/envelope/prove.ts';

/** kg and kt; `low` null where the sheet has no VMM at that weight. */
export type BandPoint = { readonly weight: number; readonly low: number | null };
export type DetentBand = {
  readonly detent: string;
  /** Highest speed, kt: VFE, or VMO where the detent has none. */
  readonly high: number;
  readonly highName: string;
  readonly next: { readonly detent: string; readonly vfe: number } | null;
  readonly points: readonly BandPoint[];
};

/** Enough for a curve to look like one. */
const SAMPLES = 33;

export function detentBands(sheet: Sheet): readonly DetentBand[] {
  const weights = weightsOf(sheet, SAMPLES);
  return sheet.detents.map(({ name, vfe }, at) => {
    const after = sheet.detents[at + 1];
    return {
      detent: name,
      high: detentLimit(sheet, name)!,
      highName: vfe ? `VFE ${name}` : 'VMO',
      next: after?.vfe ? { detent: after.name, vfe: after.vfe.value } : null,
      points: weights.map((weight) => ({ weight, low: vmmAt(sheet, name, weight) })),
    };
  });
}

/** The same at few weights, for the table behind the chart. */
export function bandRows(sheet: Sheet, band: DetentBand): readonly (BandPoint & { readonly margin: number | null })[] {
  return weightsOf(sheet, 7).map((weight) => {
    const low = vmmAt(sheet, band.detent, weight);
    return { weight, low, margin: low === null || band.next === null ? null : band.next.vfe - low };
  });
}

/** One sentence, proven over every weight: whether the next detent leaves the band that the policy wants. */
export function marginSentence(sheet: Sheet, band: DetentBand, least: number): string {
  const vmm = speedExpression(sheet, { name: 'VMM', detent: band.detent, icing: false });
  if (band.next === null || vmm === null) return '';
  const question: Compare = {
    kind: 'compare',
    left: sub(number(band.next.vfe), vmm),
    op: '>=',
    right: number(least),
    leftName: `VFE ${band.next.detent} less VMM ${band.detent}`,
    rightName: `${least} kt`,
    unit: 'kt',
  };
  return explain(question, prove(question, domainOf(sheet)));
}

const vmmAt = (sheet: Sheet, detent: string, weight: number): number | null =>
  speedAt(sheet, { name: 'VMM', detent, icing: false }, { weight });

function weightsOf(sheet: Sheet, count: number): readonly number[] {
  const from = sheet.weights.minimumFlight.value;
  const to = sheet.weights.maximumTakeOff.value;
  return Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}
