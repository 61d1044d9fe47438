import type { ReactNode } from 'react';
import css from '../sign-in/sign-in.module.css';

/** A page with one thing to say and one way on: not found, not allowed, something broke. */
export function QuietPage({ title, children }: { title: string; children: ReactNode }) {
  return (
    <main id="main" className={css.page}>
      <p className={css.mark}>
        cue<b>wright</b>
      </p>
      <h1>{title}</h1>
      {children}
    </main>
  );
}
