import type { Metadata } from 'next';
import { forbidden } from 'next/navigation';
import { welcome } from '../../../../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../../../../_ui/arrive.ts';
import { PageHead } from '../../../../../_ui/page-head.tsx';
import { Main } from '../../../../../_ui/shell.tsx';
import { NextModes } from '../../../_modes/next-modes.tsx';
import { EditWays } from '../../../edit-ways.tsx';
import { openSheet } from '../../../open-sheet.ts';
import { SheetWays } from '../../../sheet-ways.tsx';

export const metadata: Metadata = { title: 'Next mode table' };

export default async function Page({ params }: { params: Promise<{ revision: string }> }) {
  const { revision } = await params;
  const viewer = await signedIn(`/sheets/${revision}/edit/modes`);
  const { may } = shown(await welcome(viewer));
  if (!may.importSheet) forbidden();
  const { sheet } = await openSheet(viewer, revision);
  return (
    <Main>
      <PageHead label={`from revision ${sheet.revision}`} title={`${sheet.name}, next mode table`} />
      <SheetWays id={revision} here="/edit" edit />
      <EditWays id={revision} here="/modes" />
      <NextModes sheetId={revision} sheet={sheet} />
    </Main>
  );
}
