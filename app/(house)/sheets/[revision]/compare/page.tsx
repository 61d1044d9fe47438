import type { Metadata } from 'next';
import { sheetRevisions } from '../../../../../lib/server/aircraft.ts';
import { welcome } from '../../../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../../../_ui/arrive.ts';
import { PageHead } from '../../../../_ui/page-head.tsx';
import { Main } from '../../../../_ui/shell.tsx';
import { AgainstForm } from '../../against-form.tsx';
import { ChangeTable } from '../../change-table.tsx';
import { openSheet } from '../../open-sheet.ts';
import { sheetChanges } from '../../sheet-changes.ts';
import { SheetWays } from '../../sheet-ways.tsx';

export const metadata: Metadata = { title: 'Compare revisions' };

type Asked = { params: Promise<{ revision: string }>; searchParams: Promise<{ against?: string }> };

export default async function Page({ params, searchParams }: Asked) {
  const { revision } = await params;
  const { against = '' } = await searchParams;
  const viewer = await signedIn(`/sheets/${revision}/compare`);
  const { may } = shown(await welcome(viewer));
  const { sheet } = await openSheet(viewer, revision);
  const others = shown(await sheetRevisions(viewer)).filter((one) => one.id !== revision && one.type === sheet.type);
  const other = against === '' ? null : (await openSheet(viewer, against)).sheet;
  return (
    <Main>
      <PageHead label={sheet.name} title={`Revision ${sheet.revision}${other ? ` against ${other.revision}` : ''}`} />
      <SheetWays id={revision} here="/compare" edit={may.importSheet} />
      {others.length === 0 ? (
        <p>There is no other revision of this sheet to compare with.</p>
      ) : (
        <AgainstForm others={others.map(({ id, revision: says }) => ({ id, says }))} against={against} />
      )}
      {other && <ChangeTable changes={sheetChanges(other, sheet)} />}
    </Main>
  );
}
