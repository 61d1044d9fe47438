/** One run of words, kept, cut or put. Joined again, `same` and `cut` give the old text, `same` and `put` the new one. */
export type Piece = { readonly kind: 'same' | 'cut' | 'put'; readonly text: string };

/** Beyond this many words on a side the two texts are shown whole: a table of 400 × 400 is still a millisecond. */
const LONGEST = 400;

/** The redline of a wording, by whole words, by longest common subsequence. */
export function compareWords(before: string, after: string): readonly Piece[] {
  if (before === after) return before ? [{ kind: 'same', text: before }] : [];
  const old = before.match(/\s+|[^\s]+/g) ?? [];
  const now = after.match(/\s+|[^\s]+/g) ?? [];
  if (old.length > LONGEST || now.length > LONGEST)
    return pieces([
      ['cut', before],
      ['put', after],
    ]);
  const length: number[][] = Array.from({ length: old.length + 1 }, () => new Array<number>(now.length + 1).fill(0));
  for (let i = old.length - 1; i >= 0; i--) {
    for (let j = now.length - 1; j >= 0; j--) {
      length[i]![j] = old[i] === now[j] ? length[i + 1]![j + 1]! + 1 : Math.max(length[i + 1]![j]!, length[i]![j + 1]!);
    }
  }
  const found: [Piece['kind'], string][] = [];
  let i = 0;
  let j = 0;
  while (i < old.length || j < now.length) {
    if (i < old.length && j < now.length && old[i] === now[j]) {
      found.push(['same', old[i++]!]);
      j++;
    } else if (i < old.length && (j >= now.length || length[i + 1]![j]! >= length[i]![j + 1]!))
      found.push(['cut', old[i++]!]);
    else found.push(['put', now[j++]!]);
  }
  return pieces(found);
}

function pieces(found: readonly [Piece['kind'], string][]): Piece[] {
  const joined: { kind: Piece['kind']; text: string }[] = [];
  for (const [kind, text] of found) {
    const last = joined.at(-1);
    if (last?.kind === kind) last.text += text;
    else if (text) joined.push({ kind, text });
  }
  return joined;
}
