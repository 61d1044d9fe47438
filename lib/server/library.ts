// Aerodrome cards, callouts, terms and checklists: the latest version of each.
import type { Answered, Viewer } from './within.ts';

export const KINDS = ['aerodrome', 'callout', 'term', 'checklist'] as const;
export type Kind = (typeof KINDS)[number];

export type LibraryLine = {
  readonly kind: Kind;
  readonly key: string;
  readonly version: number;
  readonly content: unknown;
  readonly madeBy: string;
  readonly madeAt: string;
};

export function library(_viewer: Viewer, _kind?: Kind): Answered<readonly LibraryLine[]> {
  throw new Error('not ready');
}

/** Entries that differ from what is stored get a new version; the rest stay. */
export function importLibrary(
  _viewer: Viewer,
  _input: { kind: Kind; entries: readonly { key: string; content: unknown }[] },
): Answered<{ changed: number }> {
  throw new Error('not ready');
}
