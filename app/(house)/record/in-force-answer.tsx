import Link from 'next/link';
import type { InForceAnswer as Answer } from '../../../lib/server/record.ts';
import { sayTime } from '../../_ui/when.tsx';
import css from './record.module.css';

export function InForceAnswer({ answer }: { answer: Answer }) {
  return (
    <div className={css.answer}>
      <p>
        <b>{answer.registration}</b> at {sayTime(answer.at)}, standard {answer.standard || 'not entered'}:{' '}
        {answer.issues.length === 0 ? 'nothing was in force.' : `${answer.issues.length} in force.`}
      </p>
      {answer.issues.map((issue) => (
        <details key={issue.procedureId}>
          <summary>
            {issue.title}, issue {issue.issueNumber}, signed by {issue.signedBy} as {issue.signedAs}
          </summary>
          <dl className={css.facts}>
            <Fact
              name="In force"
              said={`${sayTime(issue.from)} until ${issue.until ? sayTime(issue.until) : 'further notice'}`}
            />
            <Fact name="Signed" said={sayTime(issue.signedAt)} />
            <Fact name="Recommended by" said={issue.recommendedBy} />
            <Fact name="Written by" said={issue.editedBy.join(', ')} />
            <Fact
              name="Sheet"
              said={`revision ${issue.sheetRevision}${issue.newerRevision ? `; ${issue.newerRevision} was available` : ''}`}
            />
            <Fact name="Policy and checks" said={`policy ${issue.policyVersion}; ${issue.checkSet}`} />
            <Fact
              name="Waivers"
              said={
                issue.waivers
                  .map((one) => `${one.check} by ${one.by}: ${one.reason} (until ${one.until})`)
                  .join('; ') || 'none'
              }
            />
            <Fact
              name="Had read it"
              said={issue.acknowledgedBy.map((one) => `${one.name}, ${sayTime(one.at)}`).join('; ') || 'nobody'}
            />
            <Fact name="Had not" said={issue.notAcknowledgedBy.join(', ') || 'nobody'} />
            <Fact name="Content" said={`sha-256 ${issue.sha256}`} />
          </dl>
          <Link href={`/procedures/${issue.procedureId}/${issue.issueNumber}`}>The text</Link>
        </details>
      ))}
    </div>
  );
}

function Fact({ name, said }: { name: string; said: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{said}</dd>
    </div>
  );
}
