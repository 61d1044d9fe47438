import Link from 'next/link';
import css from './sheet.module.css';

const WAYS = [
  ['', 'Figures'],
  ['/modes', 'Modes'],
  ['/compare', 'Compare'],
  ['/edit', 'Next revision'],
] as const;

/** The pages of one sheet. */
export function SheetWays({ id, here, edit }: { id: string; here: (typeof WAYS)[number][0]; edit: boolean }) {
  return (
    <nav className={`${css.ways} no-print`} aria-label="Pages of this sheet">
      {WAYS.filter(([way]) => edit || way !== '/edit').map(([way, name]) => (
        <Link key={way} href={`/sheets/${id}${way}`} aria-current={way === here ? 'page' : undefined}>
          {name}
        </Link>
      ))}
    </nav>
  );
}
