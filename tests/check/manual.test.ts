import { describe, expect, test } from 'vitest';
import { MISSING, type Need } from '../../lib/check/facts.ts';
import { checkNamed, findChecks, kindWords, needWords, sourceWords } from '../../lib/check/manual.ts';
import { rules } from '../../lib/check/rules/index.ts';

const numbers = (asked: Parameters<typeof findChecks>[0]) => findChecks(asked).map(({ number }) => number);

describe('finding a check', () => {
  test('nothing chosen: all of them', () => {
    expect(findChecks({})).toEqual(rules);
    expect(findChecks({ words: '', severity: '', kind: '', phase: '', stage: '' })).toEqual(rules);
  });

  test.each([
    [{ words: '109' }, [109]],
    [{ words: 'temporary revision LOST' }, [115]],
    [{ words: 'in the act of signing' }, [112]],
    [{ stage: 'in force' }, [116, 117]],
    [{ stage: 'in force', severity: 'ADVICE' }, [117]],
    [{ words: 'no such words anywhere' }, []],
  ])('%o', (asked, expected) => {
    expect(numbers(asked)).toEqual(expected);
  });

  test('a check of two kinds is found by either, one of some phases only by those', () => {
    const mixed = rules.find(({ kind }) => kind === 'T/X')!;
    expect(numbers({ kind: 'T' })).toContain(mixed.number);
    expect(numbers({ kind: 'X' })).toContain(mixed.number);
    expect(numbers({ phase: 'approach' })).toContain(72);
    expect(numbers({ phase: 'start' })).not.toContain(72);
  });

  test('by id or number', () => {
    expect(checkNamed('72')).toBe(checkNamed('nobody-watches-the-path'));
    expect(checkNamed('no-such-check')).toBeNull();
  });
});

test('every kind, need and source has its words', () => {
  for (const rule of rules) {
    expect(kindWords(rule.kind), rule.id).not.toMatch(/^[TNXS]\b|; [TNXS]\b/);
    expect(needWords(rule), rule.id).not.toContain('undefined');
    if (!rule.source.seen) expect(sourceWords(rule)).toContain('from memory');
  }
  const needs = Object.keys(MISSING) as Need[];
  expect(needs.map((need) => needWords({ ...rules[0]!, needs: [need] })).every(Boolean)).toBe(true);
});
