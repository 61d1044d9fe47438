// What an editable cell shows against what the draft holds: the one change that leads from the first to the second.

export type Splice = { readonly at: number; readonly cut: number; readonly put: string };

const HIGH = /[\uD800-\uDBFF]$/;
const LOW = /^[\uDC00-\uDFFF]/;

/** The change ends at the caret, so that in "aa" it is the right "a" that was typed; it never splits a surrogate pair. */
export function spliceOf(before: string, after: string, caret: number): Splice {
  const shortest = Math.min(before.length, after.length);
  let tail = 0;
  while (tail < Math.min(shortest, after.length - caret) && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  let head = 0;
  while (head < shortest - tail && before[head] === after[head]) head++;
  if (HIGH.test(before.slice(0, head))) head--;
  if (tail > 0 && LOW.test(before.slice(before.length - tail))) tail--;
  return { at: head, cut: before.length - tail - head, put: after.slice(head, after.length - tail) };
}
