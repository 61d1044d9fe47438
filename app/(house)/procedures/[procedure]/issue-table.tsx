import Link from 'next/link';
import { ScrollBox } from '../../../_ui/scroll-box.tsx';
import { When } from '../../../_ui/when.tsx';

type Line = { number: number; from: string; until: string | null; signedBy: string; signedAt: string };

export function IssueTable({ issues, procedureId }: { issues: readonly Line[]; procedureId: string }) {
  if (issues.length === 0) return <p className="small">Nothing was signed yet.</p>;
  return (
    <ScrollBox>
      <table>
        <thead>
          <tr>
            <th>Issue</th>
            <th>In force from</th>
            <th>Until</th>
            <th>Signed by</th>
          </tr>
        </thead>
        <tbody>
          {issues.map((issue) => (
            <tr key={issue.number}>
              <td>
                <Link href={`/procedures/${procedureId}/${issue.number}`}>Issue {issue.number}</Link>
              </td>
              <td>
                <When at={issue.from} />
              </td>
              <td>{issue.until ? <When at={issue.until} /> : 'further notice'}</td>
              <td>
                {issue.signedBy}
                <div className="small">
                  <When at={issue.signedAt} />
                </div>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
