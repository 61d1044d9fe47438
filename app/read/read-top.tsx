import Link from 'next/link';
import { SignOutButton } from '../_ui/sign-out.tsx';
import { ThemeButton } from '../_ui/theme.tsx';
import css from './read.module.css';
import { StaleBar } from './stale-bar.tsx';

/** Where the reader stands, and as of when; across the page when the copy may be out of date. */
export function ReadTop(props: {
  title: string;
  back?: { href: string; words: string };
  line?: string;
  asOf?: string;
}) {
  return (
    <>
      {props.asOf && <StaleBar asOf={props.asOf} />}
      <header className={css.top}>
        <div className={css.row}>
          <span className={`small ${css.where}`}>
            {props.back ? <Link href={props.back.href}>{props.back.words}</Link> : <Link href="/">Cuewright</Link>}
            {props.line && ` · ${props.line}`}
          </span>
          <span className="no-print">
            <ThemeButton />
            {!props.back && <SignOutButton />}
          </span>
        </div>
        <h1>{props.title}</h1>
      </header>
    </>
  );
}
