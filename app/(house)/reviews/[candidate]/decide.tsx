import type { OpenCandidate } from '../../../../lib/server/reviews.ts';
import { LinkButton } from '../../../_ui/button.tsx';
import { Notice } from '../../../_ui/notice.tsx';
import { sayTime } from '../../../_ui/when.tsx';
import { ReviewForms, WithdrawForm } from './decide-forms.tsx';
import { Frozen } from './frozen.tsx';
import css from './review.module.css';

export function Decide({ open }: { open: OpenCandidate }) {
  return (
    <aside className={`${css.side} no-print`} aria-label="Decision">
      <Frozen open={open} title="A recommendation holds for exactly this" />
      <LinkButton href={`/fly?candidate=${open.candidateId}`}>Fly it</LinkButton>
      <p>
        State: <b>{open.state}</b>
      </p>
      {open.reviews.map((review) => (
        <div className={css.box} key={review.at}>
          <p>
            <b>{review.verdict}</b> by {review.by}, {sayTime(review.at)}
          </p>
          {[review.statement, review.reason, review.riskNote && `Risk: ${review.riskNote}`]
            .filter(Boolean)
            .map((line) => (
              <p key={line}>{line}</p>
            ))}
        </div>
      ))}
      {open.whyNot && <Notice>{open.whyNot}</Notice>}
      {open.may.review && <ReviewForms candidateId={open.candidateId} />}
      {open.may.sign && (
        <LinkButton look="main" href={`/sign/${open.candidateId}`}>
          To the signature
        </LinkButton>
      )}
      {open.may.withdraw && <WithdrawForm candidateId={open.candidateId} />}
    </aside>
  );
}
