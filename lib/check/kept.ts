// Answers kept by the text they were made from. While somebody types, all texts but one are those of the moment before.

/** Texts kept by each maker; when full it is emptied, which costs one slow check. */
const MOST = 20_000;

/** The same function, which makes each answer once. `make` must depend on the text alone. */
export function kept<T>(make: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const made = make(text);
    if (known.size >= MOST) known.clear();
    known.set(text, made);
    return made;
  };
}
