// Finding by words: an entry fits when every word typed is somewhere in it, whatever the case. Pure.

/** All text of an entry in one line, numbers as written. */
function textOf(value: unknown): string {
  if (value === null || value === undefined) return '';
  if (typeof value !== 'object') return String(value);
  return Object.values(value).map(textOf).join(' ');
}

export function fits(entry: unknown, typed: string): boolean {
  const words = typed.toLocaleLowerCase('en').split(/\s+/).filter(Boolean);
  if (words.length === 0) return true;
  const text = textOf(entry).toLocaleLowerCase('en');
  return words.every((word) => text.includes(word));
}
