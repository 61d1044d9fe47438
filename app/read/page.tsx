import type { Metadata } from 'next';
import Link from 'next/link';
import { tails } from '../../lib/server/reading.ts';
import { shown, signedIn } from '../_ui/arrive.ts';
import { Empty } from '../_ui/notice.tsx';
import css from './read.module.css';
import { ReadTop } from './read-top.tsx';

export const metadata: Metadata = { title: 'Reader' };

export default async function Page() {
  const all = shown(await tails(await signedIn('/read')));
  return (
    <main>
      <ReadTop title="Which tail?" />
      {all.length === 0 && (
        <Empty title="No tail is entered">
          <p>An administrator enters the tails of the fleet; then what is in force for each appears here.</p>
        </Empty>
      )}
      <ul className={css.list}>
        {all.map((tail) => (
          <li key={tail.registration}>
            <Link href={`/read/${tail.registration}`}>
              <b>{tail.registration}</b>
              <span className="small">
                {tail.type}, {tail.standard ? `standard ${tail.standard}` : 'standard not entered'}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </main>
  );
}
