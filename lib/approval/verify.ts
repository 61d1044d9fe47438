import { canonicalText } from '../base/canonical.ts';
import { type Hash, hashOf, type Link, START } from './chain.ts';
import { readEntry } from './entry.ts';

/** `head` is the hash of the last entry: kept elsewhere, it also proves that nothing was cut off at the end. */
export type Verified =
  | { readonly ok: true; readonly entries: number; readonly head: string }
  | { readonly ok: false; readonly entries: number; readonly brokenAt: number; readonly because: string };

/** Follows the chain of `log` from its start. The first entry that is not what was sealed ends it; `brokenAt` is its place. */
export function verify(log: string, links: readonly Link[], hash: Hash): Verified {
  let previous = START;
  for (const [index, link] of links.entries()) {
    const broken = (because: string): Verified => ({ ok: false, entries: links.length, brokenAt: index + 1, because });
    if (link.seq !== index + 1) return broken(`entry ${index + 1} is missing or out of its place`);
    if (link.previous !== previous) return broken('it does not follow the entry before it');
    if (hashOf(link.seq, link.previous, link.body, hash) !== link.hash)
      return broken('its text is not what was sealed');
    const entry = readEntry(link.body);
    if (!entry.ok) return broken(entry.error);
    if (canonicalText(entry.value) !== link.body) return broken('its text is not canonical');
    if (entry.value.log !== log) return broken('it belongs to another log');
    previous = link.hash;
  }
  return { ok: true, entries: links.length, head: previous };
}
