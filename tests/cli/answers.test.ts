import { expect, test } from 'vitest';
import { seedText } from '../kit/seed.ts';
import { changed, cuewright, folderWith, lineOf, reported } from './command.ts';

const clean = seedText('procedures/direct-to.yaml');
/** One ANSWER (nobody says by how much) and one STOP (nobody acts), each in a step of its own. */
const asking = changed(clean, 'object: read-back, value: waypoint by name', 'object: read-back, value: as required');
const stopping = changed(
  asking,
  '    who: PM\n    do: { verb: set, object: route page',
  '    do: { verb: set, object: route page',
);
const today = new Date().toISOString().slice(0, 10);

type Said = Readonly<Record<string, string>>;
const withAnswers = (text: string, answers: readonly Said[]): string => {
  const entries = answers.map((answer) => `  - ${JSON.stringify(answer)}`);
  return changed(text, '\n...', `\nanswers:\n${entries.join('\n')}\n...`);
};
const REASON = 'The waypoint page shows how much, and both pilots read it there.';

function answerTo(text: string, check: string, more: Said = {}): Said {
  const finding = reported(['-'], text).procedures[0]!.findings.find((each) => each.check === check)!;
  const { step, field, read } = finding;
  return { kind: 'answer', check, step, field, read, reason: REASON, by: 'pe_r4h8', on: today, ...more };
}

test('an answered ANSWER is told with its answer and counted as answered', () => {
  const answered = withAnswers(asking, [answerTo(asking, 'elastic-words')]);
  const report = reported(['-'], answered);
  const finding = report.procedures[0]!.findings.find(({ check }) => check === 'elastic-words')!;
  expect(finding.answer).toEqual({ kind: 'answer', reason: REASON, by: 'pe_r4h8', on: today, until: null });
  expect(report.totals).toMatchObject({ answered: 1, waived: 0, openAnswers: 0 });
  const { out, code } = cuewright(['check', '-'], answered);
  expect(code).toBe(0);
  expect(out).toContain(`answered by pe_r4h8 on ${today}: ${REASON}`);
  expect(out).toMatch(/1 ANSWER, .*1 answered/);
});

test('an answer does not stand when what was read has changed, when its time is over, or when nothing is left', () => {
  const answer = answerTo(asking, 'elastic-words');
  const because = (text: string, said: Said): readonly string[] =>
    reported(['-'], withAnswers(text, [said])).procedures[0]!.openAnswers.map((open) => open.because);
  const other = changed(asking, 'value: as required', 'value: as needed');
  expect(because(other, answer)).toEqual(['what the check read has changed']);
  expect(because(asking, { ...answer, on: '2021-03-01' })).toEqual(['the time of the answer is over']);
  expect(because(clean, answer)).toEqual(['nothing is left to answer']);
  const unused = withAnswers(clean, [answer]);
  const { out, code } = cuewright(['check', '-'], unused);
  expect(code).toBe(0);
  expect(out).toContain(`answer open again · ${lineOf(unused, 'answers:') + 1}:`);
  expect(out).toContain('1 answer open again');
});

test('a waiver is shown as the file claims it, and the STOP still ends with 1', () => {
  const waiver = answerTo(stopping, 'nobody-does-it', { kind: 'waiver', until: '2999-12-31' });
  const report = reported(['-'], withAnswers(stopping, [waiver]));
  expect(report.exit).toBe(1);
  expect(report.totals).toMatchObject({ STOP: 1, waived: 1 });
  expect(cuewright(['check', '-'], withAnswers(stopping, [waiver])).out).toContain(
    'waived, the file claims, by pe_r4h8',
  );
  const plain = withAnswers(stopping, [answerTo(stopping, 'nobody-does-it')]);
  expect(reported(['-'], plain).procedures[0]!.openAnswers).toHaveLength(1);
  expect(reported(['-'], plain).totals.waived).toBe(0);
});

test('SARIF holds an answer as a suppression, a claimed waiver as one under review', () => {
  const said = [
    answerTo(stopping, 'elastic-words'),
    answerTo(stopping, 'nobody-does-it', { kind: 'waiver', until: '2999-12-31' }),
  ];
  const folder = folderWith({ 'direct.yaml': withAnswers(stopping, said) });
  const { out } = cuewright(['check', 'direct.yaml', '--format', 'sarif'], '', folder);
  const { results } = JSON.parse(out).runs[0] as { results: { ruleId: string; suppressions?: { status: string }[] }[] };
  const status = (id: string) => results.find(({ ruleId }) => ruleId === id)?.suppressions?.map((one) => one.status);
  expect(status('elastic-words')).toEqual(['accepted']);
  expect(status('nobody-does-it')).toEqual(['underReview']);
});
