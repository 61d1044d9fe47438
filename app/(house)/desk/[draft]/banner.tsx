'use client';
import Link from 'next/link';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { LinkButton } from '../../../_ui/button.tsx';
import { Notice } from '../../../_ui/notice.tsx';
import { sayTime } from '../../../_ui/when.tsx';
import { useSaved } from '../_draft/use-draft.ts';
import css from './editor.module.css';

/** What stands over the page: submitted, sent back, signed out, or something in the stored text that can't be read. */
export function Banner({ open, problems }: { open: OpenDraft; problems: readonly string[] }) {
  const saved = useSaved();
  const next = saved.kind === 'frozen' ? saved.next : open.nextDraftId;
  const frozen = saved.kind === 'frozen' || open.state === 'submitted';
  return (
    <section className={css.banners} aria-label="State of the draft">
      {frozen && (
        <Notice kind="caution" word="Submitted.">
          This draft is frozen
          {open.candidateId && (
            <>
              {' '}
              as a <Link href={`/reviews/${open.candidateId}`}>candidate</Link>
            </>
          )}
          . Later edits go to the next draft.{' '}
          {next && <LinkButton href={`/desk/${next}`}>Go on in the next draft</LinkButton>}
        </Notice>
      )}
      {!frozen && open.sentBack && (
        <Notice kind="answer" word="Sent back">
          by {open.sentBack.by}, {sayTime(open.sentBack.at)}: {open.sentBack.reason}
        </Notice>
      )}
      {saved.kind === 'signed-out' && (
        <Notice kind="stop" word="Signed out.">
          <Link href={`/sign-in?why=expired&next=/desk/${open.draftId}`}>Sign in</Link>; what you typed is kept in this
          browser and is sent then.
        </Notice>
      )}
      {problems.length > 0 && (
        <Notice kind="stop" word="Not readable:">
          {problems.slice(0, 5).join(' ')}
        </Notice>
      )}
    </section>
  );
}
