import { openForSigning } from '../../../../lib/server/signing.ts';
import { shown, signedIn } from '../../../_ui/arrive.ts';
import { PageHead, Section } from '../../../_ui/page-head.tsx';
import { ProcedureFacts } from '../../../_ui/procedure-facts.tsx';
import { railOf } from '../../../_ui/rail-rows.ts';
import { Script } from '../../../_ui/script.tsx';
import { Main } from '../../../_ui/shell.tsx';
import { Changes } from '../../reviews/[candidate]/changes.tsx';
import { Findings } from '../../reviews/[candidate]/findings.tsx';
import { OnePage } from '../../reviews/[candidate]/one-page.tsx';
import css from '../../reviews/[candidate]/review.module.css';
import { SignSide } from './sign-side.tsx';

export default async function Page({ params }: { params: Promise<{ candidate: string }> }) {
  const { candidate: id } = await params;
  const open = shown(await openForSigning(await signedIn(`/sign/${id}`), id));
  return (
    <Main>
      <PageHead label={`To be signed as issue ${open.issueNumber} · ${open.state}`} title={open.title} />
      <div className={css.wrap}>
        <div>
          <OnePage open={open} />
          <Section title="What changes">
            <Changes open={open} />
          </Section>
          <Section title="Findings, answers and waivers">
            <Findings open={open} />
          </Section>
          <Section title="The text that the signature freezes">
            <ProcedureFacts procedure={open.procedure} />
            <Script procedure={open.procedure} rail={railOf(open.procedure, open.sheet?.content, open.policy, null)} />
          </Section>
        </div>
        <SignSide open={open} />
      </div>
    </Main>
  );
}
