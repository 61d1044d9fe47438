// Notices as stored: <notice kind="caution"> with formatted text, the shape that the notes editor binds to. Made and read
// here without an editor, so that server and command line need none.
import * as Y from 'yjs';
import type { Notice } from '../procedure/procedure.ts';
import { noticeRuns, noticeText, type Run } from './notice-text.ts';

export const NOTICE_KINDS = ['note', 'caution', 'warning'] as const;

export function noticeElement(notice: Notice): Y.XmlElement {
  const element = new Y.XmlElement('notice');
  element.setAttribute('kind', notice.kind);
  const text = new Y.XmlText();
  const runs = noticeRuns(notice.text);
  if (runs.length > 0) {
    text.applyDelta(
      runs.map(({ text: insert, strong, emphasis }) => ({
        insert,
        attributes: { ...(strong && { strong: {} }), ...(emphasis && { emphasis: {} }) },
      })),
    );
  }
  element.insert(0, [text]);
  return element;
}

/** What stands in the fragment, and a sentence for each thing that is no notice. Its words are kept as a note. */
export function readNotices(fragment: Y.XmlFragment): { notices: readonly Notice[]; problems: readonly string[] } {
  const problems: string[] = [];
  const notices = fragment.toArray().map((node): Notice => {
    const element = node instanceof Y.XmlElement ? node : null;
    const kind = element?.getAttribute('kind');
    const known = NOTICE_KINDS.find((one) => one === kind);
    if (element?.nodeName !== 'notice' || !known) problems.push(`holds something that is no note, caution or warning`);
    return { kind: known ?? 'note', text: noticeText(runsOf(node)) };
  });
  return { notices, problems };
}

function runsOf(node: unknown): Run[] {
  if (node instanceof Y.XmlText) {
    const parts = node.toDelta() as { insert: unknown; attributes?: Record<string, unknown> }[];
    return parts.map(({ insert, attributes }) => ({
      text: typeof insert === 'string' ? insert : '',
      strong: Boolean(attributes?.strong),
      emphasis: Boolean(attributes?.emphasis),
    }));
  }
  if (node instanceof Y.XmlElement) return node.toArray().flatMap(runsOf);
  return [];
}
