import Link from 'next/link';
import type { Desk, ProcedureLine } from '../../../lib/server/desk.ts';
import { When } from '../../_ui/when.tsx';

export function ProcedureRow({ line, may }: { line: ProcedureLine; may: Desk['may'] }) {
  return (
    <tr>
      <td>
        <Link href={`/procedures/${line.procedureId}`}>{line.title}</Link>
        <div className="small">{[line.class, line.phases.join(', ')].filter(Boolean).join(' · ')}</div>
      </td>
      <td>
        {line.issue ? (
          <>
            issue {line.issue.number}
            <div className="small">
              since <When at={line.issue.inForceSince} />
            </div>
          </>
        ) : (
          'nothing yet'
        )}
      </td>
      <td>
        {line.next ? (
          <>
            issue {line.next.number}
            <div className="small">
              from <When at={line.next.inForceFrom} />
            </div>
          </>
        ) : (
          '–'
        )}
      </td>
      <td>
        {line.underReview && <Link href={`/reviews/${line.underReview}`}>under review</Link>}
        {line.openDraftId && may.readDrafts && (
          <div>
            <Link href={`/desk/${line.openDraftId}`}>open draft</Link>
          </div>
        )}
        {!line.openDraftId && may.write && (
          <div>
            <Link href={`/procedures/${line.procedureId}#change`}>change it</Link>
          </div>
        )}
      </td>
    </tr>
  );
}

export function ProcedureHeads() {
  return (
    <thead>
      <tr>
        <th>Procedure</th>
        <th>In force</th>
        <th>Next</th>
        <th>At work</th>
      </tr>
    </thead>
  );
}
