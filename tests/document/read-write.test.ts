import fc from 'fast-check';
import { expect, test } from 'vitest';
import * as Y from 'yjs';
import { plainForm } from '../../lib/document/notice-text.ts';
import { readDraft } from '../../lib/document/read.ts';
import { newDraftDoc } from '../../lib/document/write.ts';
import { procedure } from './arbitrary-procedure.ts';

const docOf = (...updates: Uint8Array[]) => {
  const doc = new Y.Doc();
  for (const update of updates) Y.applyUpdate(doc, update);
  return doc;
};

test('what is written is read again, for every procedure', () => {
  fc.assert(
    fc.property(procedure, (written) => {
      expect(readDraft(docOf(newDraftDoc(written)))).toEqual({ procedure: written, problems: [] });
    }),
    { seed: 7, numRuns: 200 },
  );
});

test('the same content gives the same bytes, and twice is once', () => {
  fc.assert(
    fc.property(procedure, (written) => {
      const [one, two] = [newDraftDoc(written), newDraftDoc(structuredClone(written))];
      expect(two).toEqual(one);
      expect(readDraft(docOf(one, two)).procedure).toEqual(written);
    }),
    { seed: 8, numRuns: 50 },
  );
});

test('marks of a notice settle after one way through the draft', () => {
  const piece = fc.array(fc.constantFrom('**', '_', '*', 'a', ' '), { maxLength: 14 }).map((parts) => parts.join(''));
  fc.assert(
    fc.property(piece, (text) => {
      expect(plainForm(plainForm(text))).toBe(plainForm(text));
    }),
    { seed: 9, numRuns: 3000 },
  );
  for (const text of ['**not** below', '_see_ **VFE _F6_ held**', 'a_b', '2 * 3', '**', '_'])
    expect(plainForm(text)).toBe(text);
});
