import type { ReactNode } from 'react';
import { demoPasswords } from '../../lib/server/env.ts';
import { welcome } from '../../lib/server/welcome.ts';
import { shown, signedIn } from '../_ui/arrive.ts';
import { Shell } from '../_ui/shell.tsx';

export default async function Layout({ children }: { children: ReactNode }) {
  const viewer = await signedIn('/');
  return (
    <Shell welcome={shown(await welcome(viewer))} demo={demoPasswords()}>
      {children}
    </Shell>
  );
}
