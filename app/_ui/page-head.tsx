import type { ReactNode } from 'react';
import css from './shell.module.css';

export function PageHead({ label, title, children }: { label?: ReactNode; title: string; children?: ReactNode }) {
  return (
    <header className={css.head}>
      <div>
        {label && <div className="label">{label}</div>}
        <h1>{title}</h1>
      </div>
      {children && <div className={css.acts}>{children}</div>}
    </header>
  );
}

export function Section({ title, children }: { title: string; children: ReactNode }) {
  return (
    <section className={css.section} aria-label={title}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}
