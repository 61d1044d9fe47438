import Link from 'next/link';
import { inForce } from '../../../lib/server/reading.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { Empty } from '../../_ui/notice.tsx';
import { When } from '../../_ui/when.tsx';
import css from '../read.module.css';
import { ReadTop } from '../read-top.tsx';

export default async function Page({ params }: { params: Promise<{ tail: string }> }) {
  const registration = decodeURIComponent((await params).tail);
  const { tail, asOf, lines } = shown(await inForce(await signedIn(`/read/${registration}`), registration));
  return (
    <main>
      <ReadTop
        title={tail.registration}
        back={{ href: '/read', words: 'Tails' }}
        line={`${tail.type}, standard ${tail.standard}`}
        asOf={asOf}
      />
      {lines.length === 0 && (
        <Empty title="Nothing is in force for this tail">
          <p>Nothing signed covers its standard now. Do not fly from another tail’s text; ask the fleet office.</p>
        </Empty>
      )}
      <ul className={css.list}>
        {lines.map((line) => (
          <li key={line.procedureId}>
            <Link href={`/read/${tail.registration}/${line.procedureId}`}>
              <b>{line.title}</b>
              <span className="small">
                issue {line.issueNumber}, in force since <When at={line.inForceSince} />
                {line.next && `; issue ${line.next.number} is to come`}
              </span>
              <span className={line.acknowledged ? 'small' : `small ${css.unread}`}>
                {line.acknowledged ? 'you have read it' : 'not read by you yet'}
              </span>
            </Link>
          </li>
        ))}
      </ul>
    </main>
  );
}
