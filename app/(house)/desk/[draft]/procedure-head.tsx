'use client';
import Link from 'next/link';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { ProcedureFacts } from '../../../_ui/procedure-facts.tsx';
import { useMeta } from '../_draft/use-draft.ts';
import { TextCell } from './cells.tsx';
import { useEditing } from './editing.ts';
import css from './editor.module.css';
import { MetaFields } from './meta-fields.tsx';

/** The head of the page: name, scope, the state it starts from and the state it promises. */
export function ProcedureHead({ open }: { open: OpenDraft }) {
  const meta = useMeta();
  const { may } = useEditing();
  return (
    <div className={css.meta}>
      <span className="label">
        Draft {open.number} · {[meta.class, meta.phases.join(', ')].filter(Boolean).join(' · ') || 'no class yet'}
        {open.base ? ` · in force: issue ${open.base.number}` : ' · nothing in force yet'}
      </span>
      <h1 className="unseen">{meta.title || 'Procedure without a name'}</h1>
      <div className={css.title}>
        <TextCell holder={{ in: 'meta' }} field="title" label="Name of the procedure" />
      </div>
      <ProcedureFacts procedure={{ ...meta, steps: [], branches: [] }} />
      <details>
        <summary>{may.write ? 'Scope, entry and exit state, as fields' : 'Scope, entry and exit state'}</summary>
        <MetaFields />
      </details>
      <p className="small">
        <Link href="/notation" target="_blank">
          How a cue is written
        </Link>{' '}
        · Changes because: {open.change.reason}
        {open.change.source && ` · ${open.change.source}`} · {open.change.ownedBy}
      </p>
    </div>
  );
}
