import { describe, expect, it } from 'vitest';
import { checkProcedure } from '../../lib/check/check.ts';
import { byCause, healedAndBroken } from '../../lib/check/group.ts';
import { defineRule, type Rule } from '../../lib/check/rule.ts';
import { rules } from '../../lib/check/rules/index.ts';
import { procedureWith } from '../../lib/procedure/build.ts';
import { PHASES } from '../../lib/procedure/procedure.ts';
import { housePolicy, tn182, withLimits } from '../kit/world.ts';

const facts = { sheet: tn182, policy: housePolicy };
const trial = (parts: Partial<Rule>): Rule =>
  defineRule<string>({
    id: 'trial',
    number: 900,
    severity: 'STOP',
    kind: 'T',
    stage: 'writing',
    phases: 'all',
    title: 'Trial',
    says: '',
    why: '',
    source: { text: '', seen: false },
    needs: [],
    reads: ['cue'],
    messages: { said: 'said of {what}' },
    examples: { bad: '', good: '' },
    run: () => undefined,
    ...parts,
  });
const witness = { kind: 'absent', field: 'cue' } as const;

describe('one check of a procedure', () => {
  it('fills messages and orders findings by reading order, then by number', () => {
    const loud = (number: number): Rule =>
      trial({
        number,
        run: ({ steps }, report) => {
          for (const step of [...steps].reverse()) {
            report({ at: { step: step.id, field: 'cue' }, message: 'said', data: { what: step.id }, witness });
          }
        },
      });
    const procedure = procedureWith({
      steps: [{ cue: 'then' }, { cue: 'then' }],
      branches: [{ steps: [{ id: 'x' }] }],
    });
    const { findings } = checkProcedure(procedure, facts, [loud(902), loud(901)]);
    expect(findings.map((each) => `${each.number} ${each.message}`)).toEqual([
      '901 said of s1',
      '902 said of s1',
      '901 said of s2',
      '902 said of s2',
      '901 said of x',
      '902 said of x',
    ]);
  });

  it('shows a rule that throws as a crash of that rule, and keeps the others', () => {
    const broken = trial({
      id: 'broken',
      run: () => {
        throw new Error('off by one');
      },
    });
    const result = checkProcedure(procedureWith({}), facts, [broken, trial({})]);
    expect(result.crashed).toEqual([{ check: 'broken', number: 900, error: 'off by one' }]);
    expect(result.checked.rules).toEqual(['trial']);
  });

  it('takes a message without its words for a fault of the rule', () => {
    const careless = trial({
      run: (_, report) => report({ at: { step: '', field: '' }, message: 'said', witness }),
    });
    expect(checkProcedure(procedureWith({}), facts, [careless]).crashed[0]?.error).toContain('{what}');
  });

  it('never passes in silence where a fact is missing', () => {
    const { notChecked, checked } = checkProcedure(procedureWith({ phases: PHASES }), {}, rules);
    const silent = rules.filter(
      (rule) => !checked.rules.includes(rule.id) && !notChecked.some((each) => each.check === rule.id),
    );
    expect(silent.map((rule) => rule.id)).toEqual([]);
    expect(notChecked.find((each) => each.check === 'flap-skip')).toMatchObject({
      because: 'no type data sheet was given',
    });
  });

  it('asks only what belongs to the phases of the procedure', () => {
    const result = checkProcedure(procedureWith({ phases: ['taxi'] }), facts, [trial({ phases: ['cruise'] })]);
    expect(result.checked.rules).toEqual([]);
    expect(result.notChecked).toEqual([]);
  });

  it('proves nothing over a range that is none', () => {
    const envelope = { weight: { from: 66_800, to: 46_000 } };
    const { notChecked, crashed } = checkProcedure(procedureWith({ envelope }), facts);
    expect(crashed).toEqual([]);
    expect(notChecked.find((each) => each.check === 'flap-too-slow')?.because).toBe(
      'the weight range begins above its end',
    );
    expect(notChecked.some((each) => each.check === 'no-trigger')).toBe(false);
  });

  it('says over which ranges it asked', () => {
    const envelope = { weight: { from: 46_000, to: 66_800 }, wind: { from: -10, to: 40 } };
    const { checked } = checkProcedure(procedureWith({ envelope }), facts);
    expect(checked.envelope).toBe('46.0 t to 66.8 t, -10 kt to +40 kt');
    expect(checkProcedure(procedureWith({}), facts).checked.envelope).toBe('46.0 t to 78.6 t');
    expect(checkProcedure(procedureWith({}), { sheet: null, policy: null }).checked.envelope).toBe(
      'no ranges are stated',
    );
  });
});

describe('what an answer is bound to', () => {
  const flap = { cue: 'speed <= 235 kt', who: 'PM', verb: 'select', object: 'flap lever', value: 'F6' } as const;
  const read = (step: object, given = facts): string => {
    const { findings } = checkProcedure(procedureWith({ phases: ['approach'], steps: [{ ...flap, ...step }] }), given);
    return findings.find((each) => each.check === 'flap-above-limit')!.read;
  };

  it('stands when something is edited that the check does not read', () => {
    expect(read({ note: 'a typo mended', why: 'x', checkSees: 'flaps' })).toBe(read({}));
  });

  it('changes with a field, a limit of the sheet, a figure of the policy and the range', () => {
    const other = new Set([
      read({}),
      read({ cue: 'speed <= 236 kt' }),
      read({}, { ...facts, sheet: withLimits({ F6: 230 }) }),
      read({}, { ...facts, policy: { ...housePolicy, speeds: { ...housePolicy.speeds, selectionMargin: 10 } } }),
    ]);
    expect(other.size).toBe(4);
  });

  it('changes with the version of the check', () => {
    const say: Rule['run'] = (_, report) =>
      report({ at: { step: '', field: 'a' }, message: 'said', data: { what: 1 }, witness });
    const of = (version: number): string =>
      checkProcedure(procedureWith({}), facts, [trial({ run: say, version })]).findings[0]!.read;
    expect(of(1)).not.toBe(of(2));
  });
});

describe('causes', () => {
  const flap = { who: 'PM', verb: 'select', object: 'flap lever', value: 'F6' } as const;
  const lowered = { ...facts, sheet: withLimits({ F6: 220 }) };
  const five = procedureWith({
    phases: ['approach'],
    entry: { flaps: ['F0'] },
    steps: [230, 225].map((kt) => ({ ...flap, cue: `speed <= ${kt} kt` })),
    branches: [{ when: 'judged "other"', steps: [{ ...flap, cue: 'speed <= 225 kt' }] }],
  });

  it('groups one lowered limit over the steps that it stops', () => {
    const { findings } = checkProcedure(five, lowered);
    const groups = byCause(findings.filter((each) => each.check === 'flap-above-limit'));
    expect(groups.map((group) => group.findings.length)).toEqual([
      findings.filter((each) => each.number === 38).length,
    ]);
  });

  it('puts graver groups first', () => {
    const { findings } = checkProcedure(procedureWith({ exit: { armed: null }, steps: [{ cue: '' }] }), facts);
    expect(byCause(findings).map((group) => group.findings[0]!.severity)).toEqual(['STOP', 'ANSWER']);
  });

  it('shows what a change healed and what it broke', () => {
    const before = checkProcedure(procedureWith({ steps: [{ cue: '' }] }), facts).findings;
    const after = checkProcedure(procedureWith({ steps: [{ cue: 'speed <= 180' }] }), facts).findings;
    const { healed, broken } = healedAndBroken(before, after);
    expect(healed.map((each) => each.check)).toEqual(['no-trigger']);
    expect(broken.map((each) => each.check)).toEqual(['unit-missing']);
  });
});
