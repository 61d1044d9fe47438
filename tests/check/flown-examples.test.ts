// The checks that fly: each finds its bad example, with a flight as witness that can be flown again, and lets the good one pass.
import { expect, it } from 'vitest';
import { checkProcedure } from '../../lib/check/check.ts';
import { rulesThatFly } from '../../lib/check/stage.ts';
import { example } from '../kit/rule-tester.ts';
import { houseFacts } from '../kit/world.ts';

it('are there', () => {
  expect(rulesThatFly().map((rule) => rule.number)).toEqual([
    10, 42, 44, 56, 57, 65, 67, 68, 70, 90, 92, 93, 94, 95, 96, 97, 98,
  ]);
});

it.each(rulesThatFly().map((rule) => [rule.number, rule.id, rule] as const))(
  '%i %s finds the bad and not the good',
  (_, __, rule) => {
    const asked = (text: string) => {
      const { procedure, facts } = example(text);
      return checkProcedure(procedure, { ...houseFacts, ...facts }, [rule]);
    };
    const bad = asked(rule.examples.bad);
    const good = asked(rule.examples.good);
    expect([...bad.crashed, ...good.crashed]).toEqual([]);
    expect(bad.findings.length).toBeGreaterThan(0);
    expect(good.findings.map((finding) => finding.message)).toEqual([]);
    // The same again, word for word: nothing of it hangs on chance or on what was asked before.
    expect(asked(rule.examples.bad)).toEqual(bad);
  },
);

it.each(
  rulesThatFly()
    .filter((rule) => rule.needs.includes('sheet'))
    .map((rule) => [rule.id, rule] as const),
)('%s is not checked without a sheet, and says so', (_, rule) => {
  const { procedure } = example(rule.examples.bad);
  const { notChecked, findings } = checkProcedure(procedure, { ...houseFacts, sheet: null }, [rule]);
  expect(findings).toEqual([]);
  expect(notChecked.map((each) => each.because)).toContain('no type data sheet was given');
});
