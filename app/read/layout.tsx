import type { ReactNode } from 'react';
import { KeepForOffline } from './keep-for-offline.tsx';
import css from './read.module.css';

export default function Layout({ children }: { children: ReactNode }) {
  return (
    <>
      <div className={css.page}>{children}</div>
      <KeepForOffline />
    </>
  );
}
