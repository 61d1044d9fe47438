import { afterAll, expect, test } from 'vitest';
import { init, killThreads } from 'z3-solver';
import { prove } from '../../lib/envelope/prove.ts';
import { Questions } from '../kit/questions.ts';
import { askSolver } from '../kit/z3-question.ts';

const QUESTIONS = 300;
const api = await init();
const z3 = api.Context<string>('questions');
afterAll(() => killThreads(api.em));

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
/** The middle of a list of times: one slow moment of a busy machine moves a mean, not this. */
const median = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[list.length >> 1]!;

test(`${QUESTIONS} generated questions: the verdict of z3, at least 100 times faster`, {
  timeout: 300_000,
}, async () => {
  const questions = new Questions(1_829, false);
  // Start-up outside the clock, for both.
  const warm = new Questions(1, false);
  for (let i = 0; i < 200; i++) {
    const { condition, domain } = warm.one();
    prove(condition, domain);
  }
  await askSolver(z3, warm.one());
  // A few more than needed, for those that the solver gives up. One after the other: neither disturbs the other.
  const asked = Array.from({ length: QUESTIONS + 60 }, () => questions.one());
  const answers = asked.map(({ condition, domain }) => {
    const before = performance.now();
    const { verdict } = prove(condition, domain, { quick: true });
    return { verdict, ms: performance.now() - before };
  });
  const disagree: unknown[] = [];
  const ours: number[] = [];
  const theirs: number[] = [];
  let undecided = 0;
  let compared = 0;
  for (const [i, question] of asked.entries()) {
    if (compared === QUESTIONS) break;
    const { answer, ms: solverMs } = await askSolver(z3, question);
    if (answer === 'unknown') continue;
    compared++;
    const { verdict, ms } = answers[i]!;
    if (verdict === 'undecided') undecided++;
    else {
      ours.push(ms);
      theirs.push(solverMs);
      if (verdict !== answer) disagree.push({ question, verdict, answer });
    }
  }
  expect(disagree).toEqual([]);
  expect(compared).toBe(QUESTIONS);
  expect(undecided).toBeLessThanOrEqual(QUESTIONS * 0.02);
  expect(theirs.filter((ms) => ms > 0).length).toBe(ours.length);
  expect(median(theirs) / median(ours)).toBeGreaterThan(100);
  expect(sum(theirs) / sum(ours)).toBeGreaterThan(100);
});
