import { describe, expect, test } from 'vitest';
import { evaluate } from '../../lib/base/expression.ts';
import { marginOf } from '../../lib/envelope/condition.ts';
import type { Domain } from '../../lib/envelope/domain.ts';
import { type Proof, prove } from '../../lib/envelope/prove.ts';
import { chance, type Question, Questions } from '../kit/questions.ts';
import { trueAt } from './exactly.ts';

const QUESTIONS = 2_000;
const SAMPLES = 50;

const questions = new Questions(20_261_125, true);
const asked: readonly { question: Question; proof: Proof }[] = Array.from({ length: QUESTIONS }, () => {
  const question = questions.one();
  return { question, proof: prove(question.condition, question.domain) };
});
const next = chance(7);

function* samples(domain: Domain): Generator<Record<string, number>> {
  for (let i = 0; i < SAMPLES; i++) {
    yield Object.fromEntries(
      domain.map(({ name, from, to }) => {
        const share = next();
        // One in eight stands at an end, where extremes like to hide.
        return [name, share < 1 / 16 ? from : share > 15 / 16 ? to : from + next() * (to - from)];
      }),
    );
  }
}

describe('what is proven is true at 40 digits', () => {
  test('no "holds" is broken by any of 100,000 samples', { timeout: 300_000 }, () => {
    let looked = 0;
    const broken: unknown[] = [];
    for (const { question, proof } of asked) {
      for (const at of samples(question.domain)) {
        looked++;
        if (proof.verdict === 'holds' && !trueAt(question.condition, at)) broken.push({ question, at });
      }
    }
    expect(looked).toBe(100_000);
    expect(broken).toEqual([]);
    expect(asked.filter(({ proof }) => proof.verdict === 'holds').length).toBeGreaterThan(QUESTIONS / 5);
  });

  test('every witness of "fails" fails, and no sample is worse', { timeout: 300_000 }, () => {
    let count = 0;
    for (const { question, proof } of asked) {
      if (proof.verdict !== 'fails') continue;
      count++;
      const first = Object.fromEntries(question.domain.map(({ name, from }) => [name, from]));
      expect(trueAt(question.condition, { ...first, ...proof.witness })).toBe(false);
      const { margin } = marginOf(question.condition);
      for (const at of samples(question.domain)) {
        expect(evaluate(margin, at)).toBeGreaterThan(proof.worst - 1e-3 * Math.max(1, Math.abs(proof.worst)));
      }
    }
    expect(count).toBeGreaterThan(QUESTIONS / 5);
  });

  test('hardly any question stays undecided', () => {
    const open = asked.filter(({ proof }) => proof.verdict === 'undecided');
    expect(open.length / QUESTIONS).toBeLessThan(0.02);
  });
});
