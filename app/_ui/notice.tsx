import type { ReactNode } from 'react';
import css from './notice.module.css';

type Kind = 'stop' | 'answer' | 'advice' | 'healed' | 'note' | 'caution' | 'warning' | 'plain';

/** A boxed sentence. The heading word says what the colour says, so that colour is never alone. */
export function Notice({
  kind = 'plain',
  word,
  live,
  children,
}: {
  kind?: Kind;
  word?: string;
  live?: boolean;
  children: ReactNode;
}) {
  return (
    <div className={`${css.notice} ${kind === 'plain' ? '' : css[kind]}`} role={live ? 'alert' : undefined}>
      {word && <b>{word}</b>}
      {children}
    </div>
  );
}

/** An empty screen says what to do next. */
export function Empty({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className={css.empty}>
      <h2>{title}</h2>
      {children}
    </div>
  );
}
