import type * as Y from 'yjs';
import { setField } from '../../../../lib/document/edit.ts';
import type { Hand } from '../../../../lib/document/model.ts';
import type { Expect } from '../../../../lib/procedure/procedure.ts';

const KEYS = ['thrust', 'lateral', 'vertical', 'armed'] as const;

/** Writes the whole expected mode line of a step; one undo takes all of it back. */
export function fillExpect(doc: Y.Doc, hand: Hand, step: string, expect: Expect): void {
  doc.transact(() => {
    for (const key of KEYS) setField(doc, hand, { in: 'steps', id: step }, `expect.${key}`, expect[key]);
  }, hand.keys);
}
