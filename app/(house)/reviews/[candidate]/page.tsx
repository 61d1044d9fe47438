import { openCandidate } from '../../../../lib/server/reviews.ts';
import { shown, signedIn } from '../../../_ui/arrive.ts';
import { PageHead, Section } from '../../../_ui/page-head.tsx';
import { ProcedureFacts } from '../../../_ui/procedure-facts.tsx';
import { railOf } from '../../../_ui/rail-rows.ts';
import { Script } from '../../../_ui/script.tsx';
import { Main } from '../../../_ui/shell.tsx';
import { Changes } from './changes.tsx';
import { Decide } from './decide.tsx';
import { Findings } from './findings.tsx';
import { lineOf, OnePage } from './one-page.tsx';
import css from './review.module.css';

export default async function Page({ params }: { params: Promise<{ candidate: string }> }) {
  const { candidate: id } = await params;
  const open = shown(await openCandidate(await signedIn(`/reviews/${id}`), id));
  return (
    <Main>
      <PageHead label={lineOf(open)} title={open.title} />
      <div className={css.wrap}>
        <div>
          <OnePage open={open} />
          <Section title="What changes">
            <Changes open={open} />
          </Section>
          <Section title="Findings">
            <Findings open={open} />
          </Section>
          <Section title="As it will read">
            <ProcedureFacts procedure={open.procedure} />
            <Script procedure={open.procedure} rail={railOf(open.procedure, open.sheet?.content, open.policy, null)} />
          </Section>
        </div>
        <Decide open={open} />
      </div>
    </Main>
  );
}
