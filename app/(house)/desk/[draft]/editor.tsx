'use client';
import type { ReactNode } from 'react';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { Main } from '../../../_ui/shell.tsx';
import { DraftContext, useMeta, useOpenDraft, useSaved } from '../_draft/use-draft.ts';
import { Frame } from './frame.tsx';
import { SaveLine } from './save-line.tsx';

/** Opens the shared document and hands it to the frame. */
export function Editor({ open, me }: { open: OpenDraft; me: { id: string; name: string; initials: string } }) {
  const draft = useOpenDraft(open.draftId, me);
  if (!draft) return <Waiting title={open.title} />;
  return (
    <DraftContext value={draft}>
      <WhenHere open={open} />
    </DraftContext>
  );
}

/** Cells are bound to the wording once, so the frame waits until the wording has arrived. */
function WhenHere({ open }: { open: OpenDraft }) {
  const here = useMeta().id !== '';
  const { kind } = useSaved();
  if (here) return <Frame open={open} />;
  return (
    <Waiting title={open.title}>
      {kind !== 'opening' && (
        <p>
          <SaveLine />
        </p>
      )}
    </Waiting>
  );
}

function Waiting({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <Main>
      <p role="status">Opening the draft of {title} …</p>
      {children}
    </Main>
  );
}
