/** Indexes of one longest increasing subsequence of `values`: what may be left where it stands, so that the fewest
 *  things are called moved. Patience sorting, O(n log n). */
export function longestIncreasing(values: readonly number[]): Set<number> {
  const tails: number[] = [];
  const previous: number[] = [];
  values.forEach((value, at) => {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (values[tails[middle]!]! < value) low = middle + 1;
      else high = middle;
    }
    previous[at] = low > 0 ? tails[low - 1]! : -1;
    tails[low] = at;
  });
  const kept = new Set<number>();
  for (let at = tails.at(-1) ?? -1; at >= 0; at = previous[at]!) kept.add(at);
  return kept;
}
