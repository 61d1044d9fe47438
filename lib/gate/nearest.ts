/** The nearest known word to one that was mistyped. */

/** Letters to change, add, drop or swap between two words; `most + 1` as soon as it is more than `most`. */
export function distance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return most + 1;
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, before[j - 2]! + 1);
      next.push(least);
    }
    if (Math.min(...next) > most) return most + 1;
    before = row;
    row = next;
  }
  return Math.min(row[b.length]!, most + 1);
}

/** The word of `words` that `typed` was likely meant to be; null when none is near or two are equally near. */
export function nearest(typed: string, words: readonly string[]): string | null {
  const said = typed.toLowerCase();
  if (said.length > 30) return null;
  const most = said.length <= 3 ? 1 : 2;
  let best: string | null = null;
  let least = most + 1;
  for (const word of words) {
    const far = distance(said, word.toLowerCase(), most);
    if (far < least) {
      least = far;
      best = word;
    } else if (far === least && word !== best) best = null;
  }
  return least <= most ? best : null;
}
