import { afterAll, expect, test } from 'vitest';
import { init, killThreads } from 'z3-solver';
import { prove } from '../../lib/envelope/prove.ts';
import { Questions } from '../kit/questions.ts';
import { askSolver } from '../kit/z3-question.ts';

const QUESTIONS = 300;
const api = await init();
const z3 = api.Context<string>('questions');
afterAll(() => killThreads(api.em));

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
  const disagree: unknown[] = [];
  const ours: number[] = [];
  const theirs: number[] = [];
  let undecided = 0;
  let compared = 0;
  for (let i = 0; i < QUESTIONS * 2 && compared < QUESTIONS; i++) {
    const question = questions.one();
    const before = performance.now();
    const proof = prove(question.condition, question.domain, { quick: true });
    const ms = performance.now() - before;
    const { answer, ms: solverMs } = await askSolver(z3, question);
    if (answer === 'unknown') continue;
    compared++;
    if (proof.verdict === 'undecided') undecided++;
    else {
      ours.push(ms);
      theirs.push(solverMs);
      if (proof.verdict !== answer) disagree.push({ question, proof, answer });
    }
  }
  expect(disagree).toEqual([]);
  expect(compared).toBe(QUESTIONS);
  expect(undecided).toBeLessThanOrEqual(QUESTIONS * 0.02);
  expect(theirs.filter((ms) => ms > 0).length).toBe(ours.length);
  expect(median(theirs) / median(ours)).toBeGreaterThan(100);
});
