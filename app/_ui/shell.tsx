import Link from 'next/link';
import type { ReactNode } from 'react';
import type { Welcome } from '../../lib/server/welcome.ts';
import { Care } from './care.tsx';
import { NavLink } from './nav-link.tsx';
import css from './shell.module.css';
import { SignOutButton } from './sign-out.tsx';
import { ThemeButton } from './theme.tsx';

/** The frame of every screen of the house: the ways that are open to this person, and the cautions. */
export function Shell({ welcome, demo, children }: { welcome: Welcome; demo: boolean; children: ReactNode }) {
  const { may } = welcome;
  return (
    <>
      <a className={css.skip} href="#main">
        To the page
      </a>
      <header className={`${css.bar} no-print`}>
        <Link href="/" className={css.mark}>
          cue<b>wright</b>
        </Link>
        <nav className={css.nav} aria-label="Main">
          {(may.readDrafts || may.sign) && <NavLink href="/desk">Desk</NavLink>}
          {may.readCandidates && <NavLink href="/procedures">Procedures</NavLink>}
          {may.acknowledge && <NavLink href="/read">Reader</NavLink>}
          {may.readRecord && <NavLink href="/record">Record</NavLink>}
          {(may.readCandidates || may.importSheet) && <NavLink href="/sheets">Sheets</NavLink>}
          {(may.readCandidates || may.importSheet) && <NavLink href="/library">Library</NavLink>}
          {may.readCandidates && <NavLink href="/checks">Checks</NavLink>}
          {may.managePeople && <NavLink href="/people">People</NavLink>}
          {(may.manageFleet || may.readCandidates) && <NavLink href="/fleet">Fleet</NavLink>}
          {(may.managePolicy || may.readCandidates) && <NavLink href="/policy">Policy</NavLink>}
        </nav>
        <div className={css.me}>
          <Link href="/account" className={css.who}>
            {welcome.name} <span className="small">{welcome.operatorName}</span>
          </Link>
          <ThemeButton />
          <SignOutButton />
        </div>
      </header>
      {demo && (
        <aside className={`${css.demo} no-print`} aria-label="Demo">
          Demo passwords are in use, so this server listens on this machine only. All names, places and figures are
          invented.
        </aside>
      )}
      {children}
      <Care />
    </>
  );
}

export function Main({ children }: { children: ReactNode }) {
  return (
    <main id="main" className={css.main}>
      {children}
    </main>
  );
}
