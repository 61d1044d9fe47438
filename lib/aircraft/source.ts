import type { Sheet } from './sheet.ts';

/** Where a figure comes from. `seen` false: the document was not at hand when the figure was entered. */
export type Source = { readonly text: string; readonly section: string; readonly seen: boolean };

/** Opens a reference such as `TDR 2.1`; null when the sheet lists no such document. */
export function sourceOf(sheet: Sheet, reference: string): Source | null {
  const [key, ...rest] = reference.split(' ');
  const document = sheet.documents[key ?? ''];
  return document ? { text: document.title, section: rest.join(' '), seen: document.seen } : null;
}
