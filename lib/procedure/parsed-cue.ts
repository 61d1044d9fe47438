// Gates parsed once. A parse depends on the text alone, so that keeping it changes no answer; while somebody types, all
// cues but one are those of the moment before.
import { parseGate } from '../gate/parse.ts';
import type { Parsed } from '../gate/syntax.ts';

/** More cues than a library of a hundred procedures has; when it is full it is emptied, which costs one slow check. */
const MOST = 5_000;
const known = new Map<string, Parsed>();
const NOTHING: Parsed = { gate: null, problems: [] };

/** What the text says. A blank text says nothing, without a problem. */
export function parsedCue(text: string): Parsed {
  if (text.trim() === '') return NOTHING;
  const before = known.get(text);
  if (before !== undefined) return before;
  const parsed = parseGate(text);
  if (known.size >= MOST) known.clear();
  known.set(text, parsed);
  return parsed;
}
