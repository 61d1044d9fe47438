'use client';
import { useState } from 'react';
import { addNotice } from '../../../../lib/document/edit.ts';
import { type Holder, noticesOf } from '../../../../lib/document/model.ts';
import type { Notice } from '../../../../lib/procedure/procedure.ts';
import { Button } from '../../../_ui/button.tsx';
import { NoticeLine } from '../../../_ui/script.tsx';
import { NotesEditor } from '../_draft/notes-editor.tsx';
import { useDraft } from '../_draft/use-draft.ts';
import { useEditing } from './editing.ts';
import css from './step-fields.module.css';

const KINDS = ['note', 'caution', 'warning'] as const;

/** Notices are drawn as they will read; the one editor is mounted where the caret is wanted. */
export function NoticeFields({ notices, holder }: { notices: readonly Notice[]; holder: Holder }) {
  const { doc, hand, history } = useDraft();
  const { may } = useEditing();
  const [writing, setWriting] = useState(false);
  const fragment = noticesOf(doc, holder);
  if (!may.write || !fragment) return <Read notices={notices} />;
  return (
    <span className={css.notices}>
      {writing ? (
        <NotesEditor
          notices={fragment}
          history={history}
          label="Notices before the step"
          className={css.editor}
          onLeave={() => setWriting(false)}
        />
      ) : (
        <Read notices={notices} />
      )}
      <span className={css.kinds}>
        {notices.length > 0 && !writing && (
          <Button look="plain" onClick={() => setWriting(true)}>
            Write in them
          </Button>
        )}
        {KINDS.map((kind) => (
          <Button
            key={kind}
            look="plain"
            onClick={() => {
              addNotice(doc, hand, holder, kind);
              setWriting(true);
            }}
          >
            Add {kind}
          </Button>
        ))}
      </span>
    </span>
  );
}

function Read({ notices }: { notices: readonly Notice[] }) {
  return notices.map((notice, at) => <NoticeLine key={at} kind={notice.kind} text={notice.text} />);
}
