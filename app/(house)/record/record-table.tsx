import Link from 'next/link';
import type { RecordPage } from '../../../lib/server/record.ts';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { When } from '../../_ui/when.tsx';
import css from './record.module.css';

export function RecordTable({
  page,
  query,
}: {
  page: RecordPage;
  query: Readonly<Record<string, string | undefined>>;
}) {
  if (page.lines.length === 0) return <p className="small">Nothing is recorded for this choice.</p>;
  const older = new URLSearchParams(
    Object.entries({ ...query, before: String(page.lines.at(-1)!.seq) }).filter(([, value]) => value) as [
      string,
      string,
    ][],
  );
  return (
    <ScrollBox>
      <table>
        <thead>
          <tr>
            <th>No.</th>
            <th>Time</th>
            <th>By</th>
            <th>Act</th>
            <th>What was recorded</th>
            <th>Hash</th>
          </tr>
        </thead>
        <tbody>
          {page.lines.map((line) => (
            <tr key={line.seq}>
              <td>{line.seq}</td>
              <td>
                <When at={line.at} />
              </td>
              <td>{line.by}</td>
              <td>{line.act}</td>
              <td className={css.said}>{sayBody(line.body)}</td>
              <td className={css.hash}>{line.hash.slice(0, 12)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {page.more && <Link href={`/record?${older}`}>Older acts</Link>}
    </ScrollBox>
  );
}

function sayBody(body: Readonly<Record<string, unknown>>): string {
  return Object.entries(body)
    .map(([key, value]) => {
      const said = typeof value === 'string' ? value : JSON.stringify(value);
      return `${key} ${said.length > 90 ? `${said.slice(0, 90)} …` : said}`;
    })
    .join(' · ');
}
