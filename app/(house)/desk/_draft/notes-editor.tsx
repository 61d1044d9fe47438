'use client';
// The one notes editor, mounted where the caret is: notices before a step, or at the head of a branch. Elsewhere they are
// drawn as text. Bound to the draft by y-tiptap; undo is the person's own, over words and moves alike.
import { Extension } from '@tiptap/core';
import { type Editor, EditorContent, useEditor } from '@tiptap/react';
import { ySyncPlugin, ySyncPluginKey } from '@tiptap/y-tiptap';
import { useEffect, useMemo } from 'react';
import type * as Y from 'yjs';
import type { History } from '../../../../lib/document/history.ts';
import { noticeExtensions } from '../../../../lib/document/notice-schema.ts';

type Props = {
  /** From `noticesOf`; give the editor a `key` of the row, it binds to one list of notices for its life. */
  readonly notices: Y.XmlFragment;
  readonly history: History;
  readonly label: string;
  readonly editable?: boolean;
  readonly className?: string;
  readonly onReady?: (editor: Editor) => void;
  readonly onLeave?: () => void;
};

/** Keys of the kind of notice, with Alt and Ctrl (or Cmd). */
const KINDS = { 'Mod-Alt-1': 'note', 'Mod-Alt-2': 'caution', 'Mod-Alt-3': 'warning' } as const;

function binding(notices: Y.XmlFragment, history: History) {
  return Extension.create({
    name: 'draft',
    priority: 1000,
    addKeyboardShortcuts() {
      const kinds = Object.entries(KINDS).map(([key, kind]) => [
        key,
        () => this.editor.commands.updateAttributes('notice', { kind }),
      ]);
      return {
        ...Object.fromEntries(kinds),
        'Mod-z': () => history.undo() || true,
        'Mod-y': () => history.redo() || true,
        'Shift-Mod-z': () => history.redo() || true,
      };
    },
    addProseMirrorPlugins: () => [ySyncPlugin(notices)],
  });
}

export function NotesEditor({ notices, history, label, editable = true, className, onReady, onLeave }: Props) {
  const extensions = useMemo(() => [...noticeExtensions(), binding(notices, history)], [notices, history]);
  useEffect(() => {
    history.words.addTrackedOrigin(ySyncPluginKey);
  }, [history]);
  const editor = useEditor({
    extensions,
    editable,
    immediatelyRender: false,
    editorProps: {
      attributes: {
        role: 'textbox',
        'aria-multiline': 'true',
        'aria-label': label,
        ...(className && { class: className }),
      },
    },
    onCreate: ({ editor: made }) => {
      // At once: `autofocus` waits for a frame, and the first keys would be lost.
      if (editable) made.view.focus();
      onReady?.(made);
    },
    onBlur: () => onLeave?.(),
  });
  return <EditorContent editor={editor} />;
}
