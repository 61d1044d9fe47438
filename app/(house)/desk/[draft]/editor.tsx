'use client';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { Main } from '../../../_ui/shell.tsx';
import { DraftContext, useOpenDraft } from '../../../desk/_draft/use-draft.ts';
import { Frame } from './frame.tsx';

/** Opens the shared document and hands it to the frame. */
export function Editor({ open, me }: { open: OpenDraft; me: { id: string; name: string; initials: string } }) {
  const draft = useOpenDraft(open.draftId, me);
  if (!draft) {
    return (
      <Main>
        <p role="status">Opening the draft of {open.title} …</p>
      </Main>
    );
  }
  return (
    <DraftContext value={draft}>
      <Frame open={open} />
    </DraftContext>
  );
}
