import { namesOf } from '../../../../lib/diff/describe.ts';
import { allSteps, type Expect } from '../../../../lib/procedure/procedure.ts';
import type { CandidateFinding, OpenCandidate } from '../../../../lib/server/reviews.ts';
import { FindingCard, findingListClass } from '../../../_ui/finding.tsx';
import css from './review.module.css';

export function Findings({ open }: { open: OpenCandidate }) {
  const name = namesOf(open.procedure);
  const { findings, healed, notChecked } = open;
  const expected = new Map<string, Expect>(allSteps(open.procedure).map((step) => [step.id, step.expect]));
  return (
    <>
      {findings.length === 0 && (
        <p className="small">None of the checks that ran found anything over the envelope of this procedure.</p>
      )}
      <ul className={findingListClass}>
        {findings.map((finding) => (
          <li key={finding.check + finding.read}>
            <FindingCard
              finding={finding}
              where={open.labels[finding.at.step] || name(finding.at.step) || 'procedure'}
              answered={settledBy(finding)}
              expected={expected.get(finding.at.step)}
            />
          </li>
        ))}
      </ul>
      {healed.length > 0 && (
        <p className={css.healed}>
          Healed against the issue in force:{' '}
          {healed.map((one) => `${one.check.replaceAll('-', ' ')} (${one.message})`).join('; ')}
        </p>
      )}
      {notChecked.length > 0 && (
        <p>
          Not checked: {notChecked.map((one) => `${one.check.replaceAll('-', ' ')}, because ${one.because}`).join('; ')}
        </p>
      )}
    </>
  );
}

function settledBy({ settled }: CandidateFinding): string {
  if (!settled) return '';
  const until = settled.until ? `, until ${settled.until}` : '';
  return `${settled.kind === 'waiver' ? 'Waived' : 'Answered'} by ${settled.byName}${until}: ${settled.reason}`;
}
