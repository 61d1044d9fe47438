// A short name of all that a library check could hear of the operator beside the procedure: other procedures, library, fleet.
// The same name on two machines means that they were given the same.
import { canonicalText } from '../base/canonical.ts';
import type { Facts } from './facts.ts';
import { fingerprint } from './fingerprint.ts';
import type { Told } from './told.ts';

const named = new WeakMap<object, string>();

/** Made once for each value that is handed in. */
function nameOf<T extends object>(value: T, text: (value: T) => string): string {
  const before = named.get(value);
  if (before !== undefined) return before;
  const made = fingerprint([text(value)]);
  named.set(value, made);
  return made;
}

const ofOthers = (others: readonly Told[]): string =>
  others
    .map((each) => nameOf(each, canonicalText))
    .sort()
    .join();

/** null: nothing of the library was given. In whatever order the others came. */
export function libraryState({ library, others, fleet }: Partial<Facts>): string | null {
  if (!library && !others && !fleet) return null;
  return fingerprint([
    library ? nameOf(library, canonicalText) : null,
    others ? nameOf(others, ofOthers) : null,
    fleet ? nameOf(fleet, canonicalText) : null,
  ]);
}
