import type { Metadata } from 'next';
import { openFlight } from '../../../lib/server/flights.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { LinkButton } from '../../_ui/button.tsx';
import { Empty } from '../../_ui/notice.tsx';
import { PageHead } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { Fly } from './_fly/fly.tsx';
import { homeOf, pathOf, subjectOf } from './_fly/subject.ts';

export const metadata: Metadata = { title: 'Fly it' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

export default async function Page({ searchParams }: Props) {
  const query = await searchParams;
  const viewer = await signedIn(pathOf(query));
  const subject = subjectOf(query);
  if (subject === null) {
    return (
      <Main>
        <PageHead title="Fly it" />
        <Empty title="Which text shall be flown?">
          <p>Open a draft, a candidate or an issue, and take “Fly it” there.</p>
          <LinkButton href="/procedures">Procedures</LinkButton>
        </Empty>
      </Main>
    );
  }
  const open = shown(await openFlight(viewer, subject));
  return (
    <Main>
      <PageHead label={`Fly it · ${open.name}${open.other ? `, after ${open.other.name}` : ''}`} title={open.title}>
        <LinkButton href={homeOf(open)}>To the text</LinkButton>
      </PageHead>
      <Fly open={open} />
    </Main>
  );
}
