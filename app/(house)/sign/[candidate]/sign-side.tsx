import type { OpenForSigning } from '../../../../lib/server/signing.ts';
import { Notice } from '../../../_ui/notice.tsx';
import { sayTime } from '../../../_ui/when.tsx';
import { Frozen } from '../../reviews/[candidate]/frozen.tsx';
import css from '../../reviews/[candidate]/review.module.css';
import { SignForms } from './sign-forms.tsx';

export function SignSide({ open }: { open: OpenForSigning }) {
  const recommended = open.reviews.filter((review) => review.verdict === 'recommended');
  return (
    <aside className={`${css.side} no-print`} aria-label="Signature">
      <Frozen open={open} title="Your signature freezes exactly this" />
      <div className={css.box}>
        <h2>It becomes issue {open.issueNumber}</h2>
        <p>For {open.tails.length > 0 ? open.tails.join(', ') : 'no tail of the fleet as it is today'}</p>
        <p>
          {open.supersedes
            ? `Takes the place of issue ${open.supersedes.number}, which stays readable as not in force.`
            : 'There was no issue before it.'}
        </p>
        {open.newLabels.length > 0 && <p>New labels: {open.newLabels.map((one) => one.label).join(', ')}</p>}
      </div>
      {recommended.map((review) => (
        <div className={css.box} key={review.at}>
          <p>
            <b>Recommended</b> by {review.by}, {sayTime(review.at)}
          </p>
          <p>{review.statement}</p>
          <p>{review.reason}</p>
          {review.riskNote && <p>Risk: {review.riskNote}</p>}
        </div>
      ))}
      {open.may.sign && <AtPublication open={open} />}
      {open.may.sign ? (
        <SignForms
          candidateId={open.candidateId}
          sha256={open.sha256}
          statement={open.statement}
          issue={open.issueNumber}
        />
      ) : (
        <Notice>{open.whyNot || 'Signing it is not your part, or it is not recommended yet.'}</Notice>
      )}
    </aside>
  );
}

/** What is asked in the act of signing itself. */
function AtPublication({ open }: { open: OpenForSigning }) {
  const { findings, notChecked } = open.atPublication;
  return (
    <section className={css.box} aria-label="Asked at the signature">
      <h2>Asked at the signature, in force at once</h2>
      {findings.length === 0 && <p>Nothing was found.</p>}
      {findings.map((finding) => (
        <p key={finding.read}>
          <b>{finding.severity}</b> {finding.message}
        </p>
      ))}
      {findings.some((finding) => finding.severity !== 'STOP') && (
        <p>By signing you take these on; they are recorded.</p>
      )}
      {notChecked.length > 0 && (
        <details>
          <summary>Not checked: {notChecked.length}</summary>
          {notChecked.map((one) => (
            <p key={one.check + one.because} className="small">
              {one.check.replaceAll('-', ' ')}, because {one.because}
            </p>
          ))}
        </details>
      )}
    </section>
  );
}
