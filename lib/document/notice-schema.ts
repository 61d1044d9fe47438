// The notes editor's schema: blocks of one kind each, two marks, and nothing that could become invalid. The binding deletes
// nodes that a schema doesn't know or that a merge made invalid, so every content expression holds when empty.
import { getSchema, Mark, mergeAttributes, Node } from '@tiptap/core';
import { NOTICE_KINDS } from './notices.ts';

const Notices = Node.create({ name: 'doc', topNode: true, content: 'notice*' });
const Text = Node.create({ name: 'text', group: 'inline' });

const NoticeNode = Node.create({
  name: 'notice',
  content: 'text*',
  defining: true,
  addAttributes() {
    return {
      kind: {
        default: 'note',
        parseHTML: (element) => NOTICE_KINDS.find((kind) => kind === element.getAttribute('data-kind')) ?? 'note',
        renderHTML: ({ kind }) => ({ 'data-kind': kind }),
      },
    };
  },
  parseHTML: () => [{ tag: 'p' }, { tag: 'li' }, { tag: 'div[data-kind]' }],
  renderHTML: ({ HTMLAttributes }) => ['p', mergeAttributes(HTMLAttributes), 0],
});

const Strong = Mark.create({
  name: 'strong',
  parseHTML: () => [{ tag: 'strong' }, { tag: 'b' }],
  renderHTML: () => ['strong', 0],
  addKeyboardShortcuts() {
    return { 'Mod-b': () => this.editor.commands.toggleMark('strong') };
  },
});

const Emphasis = Mark.create({
  name: 'emphasis',
  parseHTML: () => [{ tag: 'em' }, { tag: 'i' }],
  renderHTML: () => ['em', 0],
  addKeyboardShortcuts() {
    return { 'Mod-i': () => this.editor.commands.toggleMark('emphasis') };
  },
});

export const noticeExtensions = () => [Notices, Text, NoticeNode, Strong, Emphasis];
export const noticeSchema = () => getSchema(noticeExtensions());
