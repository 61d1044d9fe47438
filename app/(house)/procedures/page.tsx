import type { Metadata } from 'next';
import Link from 'next/link';
import { forbidden } from 'next/navigation';
import { desk } from '../../../lib/server/desk.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { PageHead } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { Main } from '../../_ui/shell.tsx';
import { ProcedureHeads, ProcedureRow } from './procedure-row.tsx';

export const metadata: Metadata = { title: 'Procedures' };

export default async function Page() {
  const { procedures, may } = shown(await desk(await signedIn('/procedures')));
  if (!may.readDrafts && !may.sign) forbidden();
  return (
    <Main>
      <PageHead title="Procedures" />
      {procedures.length === 0 && (
        <p>There is no procedure yet. {may.write && <Link href="/desk/new">Write the first one</Link>}</p>
      )}
      <ScrollBox>
        <table>
          <ProcedureHeads />
          <tbody>
            {procedures.map((line) => (
              <ProcedureRow key={line.procedureId} line={line} may={may} />
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </Main>
  );
}
