// Answers and waivers beside findings. An answer is bound to its check and to all that the check read; it stands while
// both are unchanged and for as many months as the policy gives. A STOP can only be waived, by somebody who did not draft.
import type { Finding, Place } from './finding.ts';

export type Answer = {
  readonly kind: 'answer' | 'waiver';
  readonly check: string;
  readonly at: Place;
  /** The finding's own `read` when it was answered. */
  readonly read: string;
  readonly reason: string;
  /** Opaque ids of people. */
  readonly by: string;
  /** UTC dates, `2026-11-25`. A waiver always has an end; an answer ends after the policy's months. */
  readonly on: string;
  readonly until: string | null;
};

export type Reopened = {
  readonly answer: Answer;
  /** Null: the check says nothing there any more; the answer is unused and is shown as such. */
  readonly finding: Finding | null;
  readonly because: 'what the check read has changed' | 'the time of the answer is over' | 'nothing is left to answer';
};

export type Answered = {
  /** Findings that stand answered, with their answers. */
  readonly standing: readonly { readonly finding: Finding; readonly answer: Answer }[];
  /** Findings that nobody has answered, or not validly any more. */
  readonly open: readonly Finding[];
  readonly reopened: readonly Reopened[];
};

/** Which answers stand. `today` and `answerMonths` come from outside: the clock and the policy. */
export function weigh(
  findings: readonly Finding[],
  answers: readonly Answer[],
  today: string,
  answerMonths: number,
): Answered {
  const standing: { finding: Finding; answer: Answer }[] = [];
  const reopened: Reopened[] = [];
  const answered = new Set<Finding>();
  for (const answer of answers) {
    const here = findings.filter((finding) => finding.check === answer.check && samePlace(finding.at, answer.at));
    const same = here.find((finding) => finding.read === answer.read && mayStand(finding, answer));
    const over = today > (answer.until ?? monthsAfter(answer.on, answerMonths));
    if (same !== undefined && !over) {
      if (!answered.has(same)) standing.push({ finding: same, answer });
      answered.add(same);
    } else if (here.length === 0) reopened.push({ answer, finding: null, because: 'nothing is left to answer' });
    else {
      const because = same === undefined ? 'what the check read has changed' : 'the time of the answer is over';
      reopened.push({ answer, finding: same ?? here[0]!, because });
    }
  }
  return { standing, open: findings.filter((finding) => !answered.has(finding)), reopened };
}

/** Null when the words may serve as a reason; else the sentence that says what is wanted. */
export function reasonProblem(reason: string, leastWords: number): string | null {
  const words = reason.match(/\p{L}{2,}/gu) ?? [];
  if (new Set(words.map((word) => word.toLowerCase())).size >= leastWords) return null;
  return `A reason of at least ${leastWords} different words is wanted: what makes it right here, and what guards it.`;
}

/** Who may settle a finding, and how. A sentence when not. `drafters`: everybody who edited the procedure. */
export function settleProblem(
  finding: Finding,
  answer: Pick<Answer, 'kind' | 'by' | 'until'>,
  drafters: readonly string[],
): string | null {
  if (!mayStand(finding, answer)) return 'A STOP is fixed, or waived by a standards captain; it can not be answered.';
  if (answer.kind === 'answer') return null;
  if (drafters.includes(answer.by)) return 'Nobody waives a STOP of a procedure that they drafted.';
  return answer.until === null ? 'A waiver has a day on which it ends: give one.' : null;
}

const mayStand = (finding: Finding, answer: Pick<Answer, 'kind'>): boolean =>
  finding.severity !== 'STOP' || answer.kind === 'waiver';
const samePlace = (a: Place, b: Place): boolean => a.step === b.step && a.field === b.field;

/** The same day so many months on; a day that the month lacks is its last. */
export function monthsAfter(day: string, months: number): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const last = new Date(Date.UTC(year, month - 1 + months + 1, 0)).getUTCDate();
  return new Date(Date.UTC(year, month - 1 + months, Math.min(date, last))).toISOString().slice(0, 10);
}
