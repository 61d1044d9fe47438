// Answers and waivers as they travel with a procedure: what was answered, by whom, until when, and the fingerprint of what the
// check had read. Whether one of them still stands is asked of the checks; a file only carries what was said.
import { z } from 'zod';
import type { FileProblem } from './problem.ts';
import { pathText } from './problem.ts';
import { stated } from './stated.ts';
import type { Read } from './validate.ts';

/** `step` '': the procedure itself. `read`: the finding's own. `by`: an opaque id. Days as `2026-11-25`, UTC. */
export type FiledAnswer = {
  readonly kind: 'answer' | 'waiver';
  readonly check: string;
  readonly at: { readonly step: string; readonly field: string };
  readonly read: string;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  readonly until: string | null;
};

/** Most answers of one procedure; more are no answers but a habit. */
const MOST_ANSWERS = 2_000;
const text = z.string().max(20_000);

const answerFormat = z.strictObject({
  kind: z.enum(['answer', 'waiver']),
  check: text.describe('Plain-word id of the check.'),
  step: text.optional().describe('Permanent id; left out: the procedure itself.'),
  field: text,
  read: text.describe('Fingerprint of all that the check had read.'),
  reason: text,
  by: text.describe('Who answered: an opaque id, never a name.'),
  on: text.describe('Day of the answer, such as 2026-11-25.'),
  until: text.optional().describe('Last day of it. A waiver always has one.'),
});
export const answersFormat = z.array(answerFormat).max(MOST_ANSWERS);
type AnswerFormat = z.infer<typeof answerFormat>;

export const readAnswer = ({ kind, check, step, field, read, reason, by, on, until }: AnswerFormat): FiledAnswer => ({
  kind,
  check,
  at: { step: step ?? '', field },
  read,
  reason,
  by,
  on,
  until: until ?? null,
});

export const writeAnswer = ({ kind, check, at, read, reason, by, on, until }: FiledAnswer): unknown =>
  stated({
    kind,
    check: { said: check },
    step: at.step,
    field: { said: at.field },
    read: { said: read },
    reason: { said: reason },
    by: { said: by },
    on,
    until,
  });

const DAY = /^\d{4}-\d{2}-\d{2}$/;
const isDay = (text: string): boolean =>
  DAY.test(text) && !Number.isNaN(Date.parse(text)) && new Date(text).toISOString().startsWith(text);

/** Days that are none, and waivers without an end. */
export function answerProblems({
  value,
  where,
}: Read<{ readonly answers?: readonly AnswerFormat[] | undefined }>): FileProblem[] {
  const tell = (path: (string | number)[], message: string, expected: readonly string[]): FileProblem => ({
    ...where(path),
    path: pathText(path),
    message,
    expected,
  });
  return (value.answers ?? []).flatMap(({ kind, on, until }, index) => {
    const path = ['answers', index];
    const looks = ['a day such as 2026-11-25'];
    return [
      ...(isDay(on) ? [] : [tell([...path, 'on'], `"${on}" is no day.`, looks)]),
      ...(until === undefined || isDay(until) ? [] : [tell([...path, 'until'], `"${until}" is no day.`, looks)]),
      ...(kind === 'waiver' && until === undefined ? [tell(path, 'A waiver has a last day.', ['until'])] : []),
    ];
  });
}
