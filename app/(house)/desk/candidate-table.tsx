import Link from 'next/link';
import type { CandidateLine } from '../../../lib/server/desk.ts';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { When } from '../../_ui/when.tsx';

export function CandidateTable({
  lines,
  to,
  empty,
}: {
  lines: readonly CandidateLine[];
  to: 'reviews' | 'sign';
  empty: string;
}) {
  if (lines.length === 0) return <p className="small">{empty}</p>;
  return (
    <ScrollBox>
      <table>
        <thead>
          <tr>
            <th>Candidate</th>
            <th>State</th>
            <th>Submitted</th>
            <th>Next</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.candidateId}>
              <td>
                <Link href={`/${to}/${line.candidateId}`}>{line.title}</Link>
                <div className="small">candidate {line.number}</div>
              </td>
              <td>
                {line.state}
                {line.reason && <div className="small">{line.reason}</div>}
              </td>
              <td>
                {line.submittedBy}
                <div className="small">
                  <When at={line.submittedAt} />
                </div>
              </td>
              <td>{nextOf(line)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}

function nextOf(line: CandidateLine): string {
  if (line.may.review) return 'your review';
  if (line.may.sign) return 'your signature';
  if (line.state === 'waiting') return 'a standards captain’s review';
  return line.state === 'recommended' ? 'an approver’s signature' : '–';
}
