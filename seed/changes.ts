// What is being worked on when the demo world is opened: two drafts, each with its reason.
import { setClock } from '../lib/server/clock.ts';
import { desk, type ProcedureLine } from '../lib/server/desk.ts';
import { startDraft } from '../lib/server/drafts.ts';
import type { People } from './basis.ts';
import { dayAgo } from './days.ts';
import { must } from './must.ts';

const CHANGES = [
  {
    by: 'reth',
    title: /go-around/i,
    reason: 'Two crews retracted late after a go-around at high weight; see whether the calls can come earlier.',
    source: 'Line feedback, three notes of the last month',
    riskNote: 'An earlier call could invite retraction below the lowest speed.',
    daysLeft: 21,
  },
  {
    by: 'wenning',
    title: /direct to/i,
    reason: 'The read-back of the lateral mode is given in two different wordings on the line.',
    source: 'Line checks, second quarter',
    riskNote: 'Words only.',
    daysLeft: 45,
  },
] as const;

export async function openChanges(people: People): Promise<void> {
  setClock(dayAgo(3));
  for (const change of CHANGES) {
    const writer = await people(change.by);
    const procedure = must(await desk(writer)).procedures.find((line) => change.title.test(line.title));
    if (!procedure || !isAtRest(procedure)) continue;
    const { reason, source, riskNote } = change;
    const dueOn = new Date(Date.now() + change.daysLeft * 24 * 60 * 60_000).toISOString().slice(0, 10);
    must(await startDraft(writer, procedure.procedureId, { reason, source, riskNote, dueOn }));
  }
}

const isAtRest = (line: ProcedureLine): boolean => line.issue !== null && !line.openDraftId && !line.underReview;
