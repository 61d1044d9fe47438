import Link from 'next/link';
import css from './sheet.module.css';

const WAYS = [
  ['', 'Its figures'],
  ['/modes', 'Its mode table'],
] as const;

/** The two parts of a sheet's next revision; both are imported together. */
export function EditWays({ id, here }: { id: string; here: (typeof WAYS)[number][0] }) {
  return (
    <nav className={`${css.editWays} no-print`} aria-label="Parts of the next revision">
      {WAYS.map(([way, name]) => (
        <Link key={way} href={`/sheets/${id}/edit${way}`} aria-current={way === here ? 'page' : undefined}>
          {name}
        </Link>
      ))}
    </nav>
  );
}
