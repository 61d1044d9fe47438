import type { Metadata } from 'next';
import { type Asked, findChecks } from '../../../lib/check/manual.ts';
import { signedIn } from '../../_ui/arrive.ts';
import { PageHead } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { CheckTable } from './check-table.tsx';
import css from './checks.module.css';
import { ChooseForm } from './choose-form.tsx';

export const metadata: Metadata = { title: 'Checks' };

export default async function Page({ searchParams }: { searchParams: Promise<Asked> }) {
  await signedIn('/checks');
  const asked = await searchParams;
  const found = findChecks(asked);
  return (
    <Main>
      <PageHead title="Checks" />
      <ChooseForm asked={asked} />
      <p role="status" className={css.found}>
        {found.length === 0 ? 'No check has all that.' : `${found.length} found.`}
      </p>
      <CheckTable checks={found} />
    </Main>
  );
}
