// The procedures of the demo world: drafted by one pilot, reviewed by a second, signed by a third, some weeks ago.
import { readFileSync } from 'node:fs';
import { setClock } from '../lib/server/clock.ts';
import { desk } from '../lib/server/desk.ts';
import { importProcedureFile } from '../lib/server/drafts.ts';
import { acknowledge, inForce } from '../lib/server/reading.ts';
import { openCandidate, recommend } from '../lib/server/reviews.ts';
import { signCandidate, signingQueue } from '../lib/server/signing.ts';
import { submitDraft } from '../lib/server/submission.ts';
import type { People } from './basis.ts';
import { dayAgo } from './days.ts';
import { must } from './must.ts';

export type File = { readonly name: string; readonly text: string };

const PASSWORD_FILE = new URL('./demo-password.txt', import.meta.url);

export async function signProcedures(people: People, files: readonly File[]): Promise<void> {
  setClock(dayAgo(60));
  const drafter = await people('reth');
  for (const file of files) await bringIn(drafter, file);

  setClock(dayAgo(52));
  const writer = await people('reth');
  for (const line of must(await desk(writer)).procedures) {
    if (line.issue || line.underReview || !line.openDraftId) continue;
    const submitted = await submitDraft(writer, line.openDraftId, 'First issue in this house.');
    if (submitted.ok || submitted.error.code === 'nothing-changed') continue;
    throw new Error(`${line.title} ${submitted.error.code}\n  ${submitted.error.details.join('\n  ')}`);
  }

  setClock(dayAgo(45));
  const reviewer = await people('maddock');
  for (const line of must(await desk(reviewer)).review) {
    const page = must(await openCandidate(reviewer, line.candidateId));
    must(
      await recommend(reviewer, line.candidateId, {
        reason: '',
        riskNote: 'Nothing that crews do today changes; the words are those that they were trained with.',
        statement: `I have read all ${page.procedure.steps.length} steps against the type data record and recommend them.`,
      }),
    );
  }

  setClock(dayAgo(40));
  const approver = await people('harrow');
  const password = readFileSync(PASSWORD_FILE, 'utf8').trim();
  for (const line of must(await signingQueue(approver))) {
    const { sha256 } = must(await openCandidate(approver, line.candidateId));
    must(await signCandidate(approver, line.candidateId, { sha256, password, effectiveFrom: null }));
  }

  setClock(dayAgo(35));
  const pilot = await people('osk');
  const registration = 'Q-SKA';
  const { lines } = must(await inForce(pilot, registration));
  // One is left for whoever tries the reader.
  for (const { procedureId, issueNumber } of lines.slice(1)) {
    must(await acknowledge(pilot, { registration, procedureId, issueNumber, device: 'tablet' }));
  }
}

async function bringIn(drafter: Awaited<ReturnType<People>>, file: File): Promise<void> {
  const { procedures } = must(await desk(drafter));
  const id = /^id: (\S+)/m.exec(file.text)?.[1];
  if (procedures.some((line) => line.procedureId === id)) return;
  const change = {
    reason: 'First issue: the procedure is brought over from the fleet manual.',
    source: 'Type data record of the TN-182, revision A',
    riskNote: 'No change for crews.',
    dueOn: null,
  };
  must(await importProcedureFile(drafter, { ...file, change }));
}
