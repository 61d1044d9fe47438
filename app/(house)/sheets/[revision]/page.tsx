import type { Metadata } from 'next';
import { checkSheet } from '../../../../lib/envelope/sheet-check.ts';
import { policies } from '../../../../lib/server/policies.ts';
import { welcome } from '../../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../../_ui/arrive.ts';
import { PageHead } from '../../../_ui/page-head.tsx';
import { Main } from '../../../_ui/shell.tsx';
import { Identity, SelfCheck } from '../identity.tsx';
import { openSheet } from '../open-sheet.ts';
import { SheetPages } from '../sheet-pages.tsx';
import { SheetWays } from '../sheet-ways.tsx';

export const metadata: Metadata = { title: 'Type data sheet' };

export default async function Page({ params }: { params: Promise<{ revision: string }> }) {
  const { revision } = await params;
  const viewer = await signedIn(`/sheets/${revision}`);
  const { may } = shown(await welcome(viewer));
  const { line, sheet } = await openSheet(viewer, revision);
  const policy = shown(await policies(viewer))[0]?.policy;
  return (
    <Main>
      <PageHead label="type data sheet" title={`${sheet.name}, revision ${sheet.revision}`} />
      <SheetWays id={revision} here="" edit={may.importSheet} />
      <Identity sheet={sheet} line={line} />
      <SelfCheck problems={checkSheet(sheet)} />
      <SheetPages sheet={sheet} least={policy?.speeds.bandMinimum ?? null} />
    </Main>
  );
}
