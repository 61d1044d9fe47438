import fs from 'node:fs/promises';
import path from 'node:path';
import type { Metadata } from 'next';
import { signedIn } from '../../_ui/arrive.ts';
import { PageHead } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { Guide } from './guide.tsx';

export const metadata: Metadata = { title: 'Gate notation' };

/** The same page that the tests read: every line in a block is a gate that is understood as it stands. */
export default async function Page() {
  await signedIn('/notation');
  const text = await fs.readFile(path.join(process.cwd(), 'lib', 'gate', 'grammar.md'), 'utf8');
  return (
    <Main>
      <PageHead title="Gate notation" />
      <Guide text={text} />
    </Main>
  );
}
