// What the clock asks of an issue in force: do the answers and waivers that it was signed with still stand?
import { checkProcedure } from '../check/check.ts';
import type { Finding, NotChecked } from '../check/finding.ts';
import { governanceOn, type StandingAnswer } from '../check/governance.ts';
import { rules } from '../check/rules/index.ts';
import { rulesUpTo } from '../check/stage.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';
import { day, factsFor } from './facts.ts';
import { during } from './issues.ts';
import { permit } from './permit.ts';
import { frozen } from './text.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type AskedAgain = {
  readonly issueNumber: number;
  readonly findings: readonly Finding[];
  readonly notChecked: readonly NotChecked[];
};

/** Of the issue in force now; null while none is. The text is asked as it was signed, against the facts of today. */
export function askedAgain(viewer: Viewer, procedureId: string): Answered<AskedAgain | null> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read candidates');
    const { operatorId, at } = standing;
    const known = await tx.procedure.findUnique({ where: { operatorId_id: { operatorId, id: procedureId } } });
    if (!known) throw new Refused('unknown');
    const issue = await tx.issue.findFirst({
      where: { operatorId, procedureId, interval: during(at) },
      include: { candidate: { select: { id: true, content: true } } },
    });
    if (!issue) return null;
    const procedure = frozen(issue.candidate);
    const facts = await factsFor(tx, standing, procedure);
    const answers = await answersOf(tx, operatorId, issue.candidate.id, procedure, facts);
    const governance = governanceOn(day(at), { answers });
    const clock = rulesUpTo('in force').filter((rule) => rule.stage === 'in force');
    const { findings, notChecked } = checkProcedure(procedure, { ...facts, governance }, clock);
    return { issueNumber: issue.number, findings, notChecked };
  });
}

/** The answers that the issue was signed with, each beside what its check reads now. Only those checks are asked. */
async function answersOf(
  tx: Tx,
  operatorId: string,
  candidateId: string,
  procedure: Procedure,
  facts: Awaited<ReturnType<typeof factsFor>>,
): Promise<readonly StandingAnswer[]> {
  const rows = await tx.finding.findMany({
    where: { operatorId, candidateId, answerId: { not: null } },
    orderBy: { position: 'asc' },
    include: { answer: true },
  });
  const answered = new Set(rows.map((row) => row.check));
  const now = checkProcedure(
    procedure,
    facts,
    rules.filter((rule) => answered.has(rule.id)),
  ).findings;
  return rows.map(({ check, stepId, field, answer }) => {
    const { kind, reason, at, until, read } = answer!;
    const here = now.filter((one) => one.check === check && one.at.step === stepId && one.at.field === field);
    return {
      kind: kind as StandingAnswer['kind'],
      check,
      at: { step: stepId, field },
      reason,
      on: day(at),
      until: until && day(until),
      read,
      readNow: (here.find((one) => one.read === read) ?? here[0])?.read ?? null,
    };
  });
}
