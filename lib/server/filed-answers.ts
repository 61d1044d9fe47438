// Answers and waivers that go out with a procedure file, and those that come in with one. A file can't prove who answered:
// what comes in becomes an answer of the person who brings it in, and a waiver is never taken from a file.
import { reasonProblem } from '../check/answer.ts';
import { checkProcedure } from '../check/check.ts';
import type { FiledAnswer } from '../file/answer-file.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import { factsFor, settledOf } from './facts.ts';
import { newId } from './ids.ts';
import type { Standing } from './permit.ts';
import { enter } from './record-entry.ts';
import { said } from './said.ts';

const keyOf = ({ check, at, read }: Pick<FiledAnswer, 'check' | 'at' | 'read'>): string =>
  [check, at.step, at.field, read].join('\u0000');

/** The newest of each finding. */
export async function answersToFile(tx: Tx, operatorId: string, procedureId: string): Promise<readonly FiledAnswer[]> {
  const settled = await settledOf(tx, operatorId, procedureId);
  const newest = new Map([...settled].reverse().map((answer) => [keyOf(answer), answer]));
  return [...newest.values()].map(({ kind, check, at, read, reason, by, on, until }) => ({
    kind,
    check,
    at,
    read,
    reason,
    by,
    on,
    until,
  }));
}

export type TakenAnswers = { readonly taken: number; readonly left: number };

/** Takes those that answer a finding of this text as it stands; an answer is no younger here than in its file. */
export async function takeAnswers(
  tx: Tx,
  standing: Standing,
  procedure: Procedure,
  answers: readonly FiledAnswer[],
): Promise<TakenAnswers> {
  if (answers.length === 0) return { taken: 0, left: 0 };
  const { operatorId, personId, at } = standing;
  const facts = await factsFor(tx, standing, procedure);
  const had = new Set((await settledOf(tx, operatorId, procedure.id)).map(keyOf));
  const asked = new Map(
    checkProcedure(procedure, facts)
      .findings.filter(({ severity }) => severity === 'ANSWER')
      .map((finding) => [keyOf(finding), finding]),
  );
  const least = facts.policy?.signOff.reasonWords ?? 1;
  const fresh = answers.filter(
    (answer) =>
      answer.kind === 'answer' &&
      asked.has(keyOf(answer)) &&
      !had.has(keyOf(answer)) &&
      reasonProblem(answer.reason, least) === null,
  );
  for (const answer of fresh) {
    const day = new Date(`${answer.on}T00:00:00Z`);
    const { check, read } = answer;
    const { message } = asked.get(keyOf(answer))!;
    const id = newId('an');
    const reason = said(answer.reason);
    await tx.findingAnswer.create({
      data: {
        operatorId,
        id,
        procedureId: procedure.id,
        kind: 'answer',
        check,
        read,
        stepId: answer.at.step,
        field: answer.at.field,
        message,
        reason,
        until: answer.until === null ? null : new Date(`${answer.until}T00:00:00Z`),
        personId,
        at: day < at ? day : at,
      },
      select: { id: true },
    });
    const told = { id, check, read, step: answer.at.step, reason, until: answer.until, fromFile: answer.by };
    await enter(tx, standing, 'finding answered', procedure.id, told);
  }
  return { taken: fresh.length, left: answers.length - fresh.length };
}
