import Link from 'next/link';
import type { Rule } from '../../../lib/check/rule.ts';
import css from './checks.module.css';

/** One line a check, by number. */
export function CheckTable({ checks }: { checks: readonly Rule[] }) {
  return (
    <ul className={css.checks}>
      {checks.map(({ id, number, severity, title, says, stage }) => (
        <li key={id}>
          <span className={css.number}>{number}</span>
          <div>
            <h2>
              <Link href={`/checks/${id}`}>{title}</Link>
            </h2>
            <p>{says}</p>
            <p className="small">
              <b className={css[severity]}>{severity}</b> from {stage} on
            </p>
          </div>
        </li>
      ))}
    </ul>
  );
}
