'use client';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { ActForm } from '../../../_ui/act-form.tsx';
import { LongField } from '../../../_ui/field.tsx';
import { Notice } from '../../../_ui/notice.tsx';
import { useSaved } from '../_draft/use-draft.ts';
import { submit } from './actions.ts';
import { unsettled } from './findings-panel.tsx';
import type { Checking } from './use-checks.ts';

/** The last look before the text is frozen. The server asks every check again and decides. */
export function SubmitPanel({ open, checking }: { open: OpenDraft; checking: Checking }) {
  const saved = useSaved();
  const left = unsettled(checking.checked?.findings ?? [], open).filter((finding) => finding.severity !== 'ADVICE');
  if (!open.may.submit) return <p>Submitting is the drafter’s part.</p>;
  return (
    <>
      <h2>Submit for review</h2>
      <p className="small">
        The text is frozen as a candidate and later edits go to the next draft. A standards captain who did not edit it
        reviews; an approver who did neither signs.
      </p>
      {left.length > 0 && (
        <Notice kind="answer">{left.length} findings are not settled. The server will say which.</Notice>
      )}
      {saved.kind !== 'saved' && (
        <Notice kind="answer">Not everything is saved yet; what is not saved is not submitted.</Notice>
      )}
      <ActForm
        act={(words) => submit({ ...words, draftId: open.draftId } as Parameters<typeof submit>[0])}
        onDone={({ candidateId }) => ({ go: `/reviews/${candidateId}` })}
        button="Submit"
      >
        <LongField
          label="Note to the reviewer"
          name="note"
          hint="Which habit changes, what hands and ears will notice, what else must change that day."
        />
      </ActForm>
    </>
  );
}
