import { generateNKeysBetween } from 'fractional-indexing';
import * as Y from 'yjs';
import type { Procedure } from '../procedure/procedure.ts';
import { META_TEXTS, META_VALUES, metaOf, SCHEMA } from './model.ts';
import { makeRow, type Row, rowOfBranch, rowOfStep } from './row.ts';

/**
 * The first state of a draft of this procedure, as a Yjs update. The same content gives the same bytes: the writer's number
 * comes from the content, so a draft made twice by two servers at once is one draft.
 */
export function newDraftDoc(procedure: Procedure): Uint8Array {
  const doc = new Y.Doc();
  doc.clientID = fnv1a(JSON.stringify(procedure));
  doc.transact(() => {
    const meta = metaOf(doc);
    meta.set('schema', SCHEMA);
    for (const key of META_TEXTS) meta.set(key, new Y.Text(String(at(procedure, key))));
    for (const key of META_VALUES) meta.set(key, at(procedure, key));
    put(doc, 'branches', procedure.branches.map(rowOfBranch), null);
    put(doc, 'steps', procedure.steps.map(rowOfStep), null);
    for (const branch of procedure.branches) put(doc, 'steps', branch.steps.map(rowOfStep), branch.id);
  });
  const update = Y.encodeStateAsUpdate(doc);
  doc.destroy();
  return update;
}

function put(doc: Y.Doc, list: 'steps' | 'branches', rows: readonly Row[], parent: string | null): void {
  const ranks = generateNKeysBetween(null, null, rows.length);
  rows.forEach((row, i) => {
    makeRow(doc, list, row, { parent, rank: ranks[i]! }, false);
  });
}

/** The value under a dotted key, such as `entry.flaps`. */
function at(procedure: Procedure, key: string): unknown {
  return key.split('.').reduce<unknown>((value, part) => (value as Record<string, unknown>)[part], procedure);
}

/** FNV-1a of the UTF-16 code units, 32 bits. */
function fnv1a(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
