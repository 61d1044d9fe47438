'use client';
import { Redo2, Undo2 } from 'lucide-react';
import Link from 'next/link';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { Button, LinkButton } from '../../../_ui/button.tsx';
import { useHistory, usePeers } from '../_draft/use-draft.ts';
import { asFile } from './actions.ts';
import { useEditing } from './editing.ts';
import css from './editor.module.css';
import { SaveLine } from './save-line.tsx';

/** Where we are, who else is here, how far the database has it. */
export function HeadBar({ open, said, onSubmit }: { open: OpenDraft; said: string; onSubmit: () => void }) {
  const { undo, redo, canUndo, canRedo } = useHistory();
  const { may, refuse } = useEditing();
  const peers = usePeers();
  const faces = [...new Map(peers.map((peer) => [peer.person.id, peer.person])).values()];
  const download = async () => {
    const answer = await asFile({ draftId: open.draftId }).catch(() => null);
    if (!answer?.ok) {
      refuse(answer ? answer.error.sentence : 'The server did not answer. Nothing was changed; try again.');
      return;
    }
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([answer.value.text], { type: 'application/yaml' }));
    link.download = answer.value.name;
    link.click();
    URL.revokeObjectURL(link.href);
  };
  return (
    <section className={`${css.head} no-print`} aria-label="This draft">
      <span className="small">
        <Link href="/desk">Desk</Link> / draft {open.number}
        {open.base && `, against issue ${open.base.number}`}
      </span>
      <span className={css.said} role="status">
        {said}
      </span>
      <SaveLine />
      <span className={css.faces}>
        {faces.map((person) => (
          <span key={person.id} title={`${person.name} is here`}>
            {person.initials}
            <span className="unseen"> {person.name} is here</span>
          </span>
        ))}
      </span>
      {may.write && (
        <>
          <Button onClick={undo} disabled={!canUndo} aria-label="Undo">
            <Undo2 size={18} aria-hidden="true" />
          </Button>
          <Button onClick={redo} disabled={!canRedo} aria-label="Redo">
            <Redo2 size={18} aria-hidden="true" />
          </Button>
        </>
      )}
      <LinkButton href={`/fly?draft=${open.draftId}`}>Fly it</LinkButton>
      <Button onClick={download}>As a file</Button>
      <Button onClick={() => window.print()}>Print</Button>
      {may.submit && (
        <Button look="main" onClick={onSubmit}>
          Submit …
        </Button>
      )}
    </section>
  );
}
