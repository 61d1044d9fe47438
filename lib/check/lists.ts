// Checklists as the checks on lists see them: where a procedure reads or feeds one, which is read last before the runway
// or the landing, and whether an item confirms a part of the configuration.
import type { Checklist, Library } from '../library/library.ts';
import type { Step } from '../procedure/procedure.ts';
import type { Place } from './finding.ts';
import { callsList, listNamed } from './list-calls.ts';

export type Last = 'take-off' | 'landing';

/** The list of the library that this step has read; null where it reads none. */
export const listReadAt = (step: Step, library: Library): Checklist | null =>
  callsList(step) ? listNamed(step.object, library) : null;

/** Each list once: where it is read, else at the first step that one of its items links to. */
export function listsAt(
  steps: readonly Step[],
  library: Library,
): readonly { readonly list: Checklist; readonly at: Place }[] {
  return library.checklists.flatMap((list) => {
    const reads = steps.find((step) => listReadAt(step, library) === list);
    const feeds = steps.find((step) => step.label !== '' && list.items.some((item) => item.steps.includes(step.label)));
    const step = reads ?? feeds;
    return step === undefined ? [] : [{ list, at: { step: step.id as string, field: 'object' } }];
  });
}

const PARTS = ['flap', 'slat', 'gear', 'trim', 'speedbrake', 'spoiler', 'autobrake'] as const;

/** The part of the configuration that an object moves, such as `flap`; null: none. */
export function configured(object: string): string | null {
  const text = object.toLowerCase();
  return PARTS.find((part) => new RegExp(`\\b${part}s?\\b`).test(text)) ?? null;
}

/** Whether the item asks for it. */
export const confirms = ({ challenge }: Checklist['items'][number], thing: string): boolean =>
  thing !== '' && challenge.toLowerCase().includes(thing);

const LAST: Readonly<Record<Last, readonly RegExp[]>> = {
  'take-off': [/\bline-?\s?up\b|\brunway entry\b/i, /\bbefore take-?off\b/i],
  landing: [/\blanding\b/i, /\bfinal\b/i],
};

/** The list that is read last before it, by its name; null where the library has none such. */
export function lastBefore(what: Last, { checklists }: Library): Checklist | null {
  for (const name of LAST[what]) {
    const found = checklists.find((list) => name.test(`${list.title} ${list.id}`) && !/\bafter\b/i.test(list.title));
    if (found !== undefined) return found;
  }
  return null;
}
