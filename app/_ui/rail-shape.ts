// The band rail as shapes: one row a step, rows joined, so that reading down the page the band moves like a river.
// Pure: the same on the server, in the draft, in the reader and on paper.

export type Band = { readonly low: number; readonly high: number };
/** Knots. `all`: over all weights of the envelope; `one`: at the weight chosen. null: no band can be told, see `because`. */
export type RailRow = {
  readonly id: string;
  readonly all: Band | null;
  readonly one: Band | null;
  readonly target: number | null;
  readonly lowName: string;
  readonly highName: string;
  readonly because: string;
};
export type Scale = { readonly from: number; readonly to: number };

/** Above this the clean upper limit would squeeze all flap bands into a corner; the band is then drawn open to the right. */
const WIDEST = 270;

export function scaleOf(rows: readonly RailRow[]): Scale {
  const lows = rows.flatMap((row) => [row.all?.low, row.one?.low, row.target].filter((x) => typeof x === 'number'));
  const highs = rows.flatMap((row) => [row.all?.high, row.one?.high, row.target].filter((x) => typeof x === 'number'));
  if (lows.length === 0) return { from: 100, to: 240 };
  const from = Math.floor((Math.min(...lows) - 8) / 10) * 10;
  const to = Math.min(WIDEST, Math.ceil((Math.max(...highs) + 8) / 10) * 10);
  return { from, to: Math.max(to, from + 60) };
}

/** Percent of the rail's width; values off the scale stand at its edge. */
export const across = (scale: Scale, knots: number): number =>
  Math.round(Math.min(100, Math.max(0, ((knots - scale.from) / (scale.to - scale.from)) * 100)) * 100) / 100;

/** The outline of one row's band in a box of 100 × 100. Its upper and lower edges lie half-way to the neighbours' values,
 *  so that two rows meet at their border whatever their heights. */
export function outline(scale: Scale, band: Band, before: Band | null, after: Band | null): string {
  const half = (a: number, b: number | undefined) => across(scale, (a + (b ?? a)) / 2);
  const [low, high] = [across(scale, band.low), across(scale, band.high)];
  const top = { low: half(band.low, before?.low), high: half(band.high, before?.high) };
  const end = { low: half(band.low, after?.low), high: half(band.high, after?.high) };
  return [
    `M${top.low} 0`,
    `C${top.low} 12 ${low} 12 ${low} 26`,
    `L${low} 74`,
    `C${low} 88 ${end.low} 88 ${end.low} 100`,
    `L${end.high} 100`,
    `C${end.high} 88 ${high} 88 ${high} 74`,
    `L${high} 26`,
    `C${high} 12 ${top.high} 12 ${top.high} 0`,
    'Z',
  ].join(' ');
}

/** Knots to the nearer end; negative when the target lies outside. */
export const marginOf = (band: Band, target: number): number => Math.min(target - band.low, band.high - target);

/** The rail in words, for those who can't see it and for the table behind it. */
export function sayRow(row: RailRow, weight: string): string {
  if (!row.one) return row.because || 'no band';
  const low = Math.round(row.one.low);
  const high = Math.round(row.one.high);
  const band = `band at ${weight} from ${low} kt (${row.lowName}) to ${high} kt (${row.highName})`;
  if (row.target === null) return band;
  return `${band}, target ${Math.round(row.target)} kt, margin ${Math.round(marginOf(row.one, row.target))} kt`;
}
