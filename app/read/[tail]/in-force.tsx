import Link from 'next/link';
import type { InForceLine } from '../../../lib/server/reading.ts';
import { When } from '../../_ui/when.tsx';
import css from '../read.module.css';

export function InForce({ lines, registration }: { lines: readonly InForceLine[]; registration: string }) {
  return (
    <ul className={css.list}>
      {lines.map((line) => (
        <li key={line.procedureId}>
          <Link href={`/read/${registration}/${line.procedureId}`}>
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
  );
}
