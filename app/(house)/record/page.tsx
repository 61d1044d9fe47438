import type { Metadata } from 'next';
import { tails } from '../../../lib/server/reading.ts';
import { inForceAt, readRecord } from '../../../lib/server/record.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { PageHead, Section } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { AskForm, FilterForm } from './ask-form.tsx';
import { InForceAnswer } from './in-force-answer.tsx';
import { filterOf, type Query, questionOf } from './query.ts';
import { RecordTable } from './record-table.tsx';
import { VerifyButtons } from './verify-buttons.tsx';

export const metadata: Metadata = { title: 'Record' };

export default async function Page({ searchParams }: { searchParams: Promise<Query> }) {
  const query = await searchParams;
  const viewer = await signedIn('/record');
  const page = shown(await readRecord(viewer, filterOf(query)));
  const all = shown(await tails(viewer));
  const question = questionOf(query);
  const answer = question && shown(await inForceAt(viewer, question.tail, question.at));
  return (
    <Main>
      <PageHead title="Record">
        <VerifyButtons />
      </PageHead>
      <Section title="What was in force for a tail at a time">
        <AskForm tails={all.map((tail) => tail.registration)} tail={query.tail} at={query.at} />
        {answer && <InForceAnswer answer={answer} />}
      </Section>
      <Section title="Every act">
        <FilterForm acts={page.acts} people={page.people} act={query.act} person={query.person} />
        <RecordTable page={page} query={query} />
      </Section>
    </Main>
  );
}
