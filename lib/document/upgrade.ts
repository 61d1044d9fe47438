import * as Y from 'yjs';
import { BRANCH_TEXTS, type Fields, MAKING, META_TEXTS, metaOf, rowsOf, SCHEMA, STEP_TEXTS } from './model.ts';

export type Upgrade = 'current' | 'upgraded' | 'newer';

/**
 * Brings a stored draft to this version: every text and notice list that a row should have and an older client didn't make.
 * The server alone calls it, as it loads a draft: two who make the same type at once would lose what is typed in one of them.
 * A draft of a newer version is left alone, and is to be shown read-only.
 */
export function upgradeDraft(doc: Y.Doc): Upgrade {
  const stored = metaOf(doc).get('schema');
  if (typeof stored === 'number' && stored > SCHEMA) return 'newer';
  let changed = false;
  const complete = (fields: Fields, texts: readonly string[], notices: boolean) => {
    for (const key of texts) {
      const value = fields.get(key);
      if (value instanceof Y.Text) continue;
      fields.set(key, new Y.Text(typeof value === 'string' ? value : ''));
      changed = true;
    }
    if (!notices || fields.get('before') instanceof Y.XmlFragment) return;
    fields.set('before', new Y.XmlFragment());
    changed = true;
  };
  doc.transact(() => {
    for (const fields of rowsOf(doc, 'steps').values()) if (fields instanceof Y.Map) complete(fields, STEP_TEXTS, true);
    for (const fields of rowsOf(doc, 'branches').values())
      if (fields instanceof Y.Map) complete(fields, BRANCH_TEXTS, true);
    complete(metaOf(doc), META_TEXTS, false);
    if (stored === SCHEMA) return;
    metaOf(doc).set('schema', SCHEMA);
    changed = true;
  }, MAKING);
  return changed ? 'upgraded' : 'current';
}
