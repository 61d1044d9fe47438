import Link from 'next/link';
import { notFound } from 'next/navigation';
import { askedAgain } from '../../../../lib/server/asked-again.ts';
import { desk } from '../../../../lib/server/desk.ts';
import { issuesOf } from '../../../../lib/server/reading.ts';
import { shown, signedIn } from '../../../_ui/arrive.ts';
import { PageHead, Section } from '../../../_ui/page-head.tsx';
import { Main } from '../../../_ui/shell.tsx';
import { AskedAgainList } from './asked-again.tsx';
import { IssueTable } from './issue-table.tsx';
import { StartForm } from './start-form.tsx';

export default async function Page({ params }: { params: Promise<{ procedure: string }> }) {
  const { procedure } = await params;
  const viewer = await signedIn(`/procedures/${procedure}`);
  const { procedures, may } = shown(await desk(viewer));
  const line = procedures.find((one) => one.procedureId === procedure) ?? notFound();
  const issues = shown(await issuesOf(viewer, procedure));
  const asked = may.readDrafts || may.sign ? shown(await askedAgain(viewer, procedure)) : null;
  return (
    <Main>
      <PageHead label={[line.class, ...line.phases].filter(Boolean).join(' · ')} title={line.title} />
      <Section title="Issues">
        <IssueTable issues={issues} procedureId={procedure} />
      </Section>
      {asked && <AskedAgainList asked={asked} />}
      {line.openDraftId && may.readDrafts && (
        <p>
          <Link href={`/desk/${line.openDraftId}`}>Open the draft</Link> that is being written.
        </p>
      )}
      {!line.openDraftId && may.write && (
        <Section title="Change it">
          <StartForm procedureId={procedure} />
        </Section>
      )}
    </Main>
  );
}
