import type { Metadata } from 'next';
import { welcome } from '../../../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../../../_ui/arrive.ts';
import { PageHead } from '../../../../_ui/page-head.tsx';
import { Main } from '../../../../_ui/shell.tsx';
import { ModePages } from '../../mode-pages.tsx';
import { openSheet } from '../../open-sheet.ts';
import { SheetWays } from '../../sheet-ways.tsx';

export const metadata: Metadata = { title: 'Modes' };

type Asked = { params: Promise<{ revision: string }>; searchParams: Promise<{ axis?: string }> };

export default async function Page({ params, searchParams }: Asked) {
  const { revision } = await params;
  const { axis } = await searchParams;
  const viewer = await signedIn(`/sheets/${revision}/modes`);
  const { may } = shown(await welcome(viewer));
  const { sheet } = await openSheet(viewer, revision);
  return (
    <Main>
      <PageHead label={`${sheet.name}, revision ${sheet.revision}`} title="Modes" />
      <SheetWays id={revision} here="/modes" edit={may.importSheet} />
      <p className="small">From {sheet.modes.source}.</p>
      <ModePages modes={sheet.modes} view={axis} />
    </Main>
  );
}
