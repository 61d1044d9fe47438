import Link from 'next/link';
import type { RevisionLine } from '../../../lib/server/aircraft.ts';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { When } from '../../_ui/when.tsx';

export function RevisionTable({ lines }: { lines: readonly RevisionLine[] }) {
  return (
    <ScrollBox>
      <table>
        <thead>
          <tr>
            <th>Sheet</th>
            <th>Imported</th>
            <th>Rests on</th>
            <th>Content</th>
            <th>
              <span className="unseen">Compare</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line, at) => {
            const earlier = lines.slice(at + 1).find((one) => one.type === line.type);
            return (
              <tr key={line.id}>
                <td>
                  <Link href={`/sheets/${line.id}`}>
                    {line.type}, revision {line.revision}
                  </Link>
                </td>
                <td>
                  {line.importedBy}
                  <div className="small">
                    <When at={line.importedAt} />
                  </div>
                </td>
                <td className="small">{line.sources.join('; ')}</td>
                <td className="gate small">{line.sha256.slice(0, 12)}</td>
                <td>
                  {earlier && (
                    <Link href={`/sheets/${line.id}/compare?against=${earlier.id}`}>
                      what changed since {earlier.revision}
                    </Link>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollBox>
  );
}
