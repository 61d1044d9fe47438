import Link from 'next/link';
import type { DraftLine } from '../../../lib/server/desk.ts';
import { LinkButton } from '../../_ui/button.tsx';
import { Empty } from '../../_ui/notice.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { When } from '../../_ui/when.tsx';

export function DraftTable({ lines, write }: { lines: readonly DraftLine[]; write: boolean }) {
  if (lines.length === 0) {
    return (
      <Empty title="No draft is open">
        <p>A draft starts from the issue in force of a procedure, with the reason for the change.</p>
        {write && <LinkButton href="/procedures">Choose a procedure</LinkButton>}
      </Empty>
    );
  }
  return (
    <ScrollBox>
      <table>
        <thead>
          <tr>
            <th>Procedure</th>
            <th>Why it changes</th>
            <th>Due</th>
            <th>Written by</th>
            <th>Last edit</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.draftId}>
              <td>
                <Link href={`/desk/${line.draftId}`}>{line.title}</Link>
                <div className="small">
                  draft {line.number}
                  {line.mine && ', mine'}
                </div>
              </td>
              <td>{line.reason}</td>
              <td>{line.dueOn ?? 'no date'}</td>
              <td>{line.editors.join(', ') || 'nobody yet'}</td>
              <td>{line.lastEdit ? <When at={line.lastEdit} /> : 'not yet'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
