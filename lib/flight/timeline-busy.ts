/** The window in which somebody has least time left: its share of work, 0 to 1, and when it begins. */
export type Busy = { readonly share: number; readonly from: number };

type Stretch = { readonly start: number; readonly end: number };

/**
 * The busiest window of a width in seconds, slid over all times from nil. The share of a window changes its slope only
 * where an edge of it meets an edge of a span, so that those windows are enough. Spans of one person don't overlap.
 */
export function busiest(spans: readonly Stretch[], width: number): Busy {
  let best: Busy = { share: 0, from: 0 };
  const starts = new Set([0, ...spans.flatMap(({ start, end }) => [start, Math.max(0, end - width)])]);
  for (const from of [...starts].sort((a, b) => a - b)) {
    const share =
      spans.reduce((sum, { start, end }) => sum + Math.max(0, Math.min(end, from + width) - Math.max(start, from)), 0) /
      width;
    if (share > best.share + 1e-12) best = { share, from };
  }
  return best;
}
