import { oldIssue } from '../../../../../lib/server/reading.ts';
import { shown, signedIn } from '../../../../_ui/arrive.ts';
import { LinkButton } from '../../../../_ui/button.tsx';
import { Notice } from '../../../../_ui/notice.tsx';
import { PageHead } from '../../../../_ui/page-head.tsx';
import { ProcedureFacts } from '../../../../_ui/procedure-facts.tsx';
import { railOf } from '../../../../_ui/rail-rows.ts';
import { Script } from '../../../../_ui/script.tsx';
import { Main } from '../../../../_ui/shell.tsx';
import { sayTime } from '../../../../_ui/when.tsx';

export default async function Page({ params }: { params: Promise<{ procedure: string; issue: string }> }) {
  const { procedure: id, issue } = await params;
  const read = shown(await oldIssue(await signedIn(`/procedures/${id}/${issue}`), id, Number(issue)));
  const { procedure } = read;
  return (
    <Main>
      <PageHead
        label={`Issue ${read.issueNumber} · signed by ${read.signedBy}, ${sayTime(read.signedAt)}`}
        title={procedure.title}
      >
        <LinkButton href={`/fly?procedure=${id}&issue=${read.issueNumber}`}>Fly it</LinkButton>
      </PageHead>
      {!read.inForce && (
        <Notice kind="warning" word="Not in force.">
          {read.inForceUntil
            ? `It was in force from ${sayTime(read.inForceFrom)} until ${sayTime(read.inForceUntil)}.`
            : `It comes in force ${sayTime(read.inForceFrom)}.`}
        </Notice>
      )}
      <ProcedureFacts procedure={procedure} />
      <Script procedure={procedure} rail={railOf(procedure, read.sheet?.content, read.policy, null)} />
      <p className="small gate">sha-256 {read.sha256}</p>
    </Main>
  );
}
