import { describe, expect, test } from 'vitest';
import { evaluate } from '../../lib/base/expression.ts';
import { axis, domainOf } from '../../lib/envelope/domain.ts';
import { explain } from '../../lib/envelope/explain.ts';
import { gateCondition, type TermContext, termExpression } from '../../lib/envelope/gate-terms.ts';
import { prove } from '../../lib/envelope/prove.ts';
import { parseGate } from '../../lib/gate/parse.ts';
import type { Gate, Term } from '../../lib/gate/syntax.ts';
import { defaultPolicy } from '../../lib/policy/policy.ts';
import { tn182 } from '../kit/sheets.ts';

const sheet = tn182();
const context: TermContext = { sheet, policy: defaultPolicy };

function gate(text: string): Gate {
  const parsed = parseGate(text);
  if (parsed.gate === null || parsed.problems.length > 0)
    throw new Error(`${text}: ${JSON.stringify(parsed.problems)}`);
  return parsed.gate;
}

/** The right side of `speed >= …`. */
function term(text: string): Term {
  const found = gate(`speed >= ${text}`);
  if (found.kind !== 'compare') throw new Error(found.kind);
  return found.right;
}

/** kt at a weight, or the reason why there is no figure. */
function kt(text: string, at: Record<string, number> = { weight: 78_600 }): number | string {
  const found = termExpression(term(text), context);
  return found.ok ? Math.round(evaluate(found.value.expression, at) * 10) / 10 : found.error;
}

describe('a term of a gate becomes a formula', () => {
  test.each([
    ['VMM F12', 166.3],
    ['VFE F18 - 5 kt', 190],
    ['VFE F18', 195],
    ['clean speed', 214.2],
    ['VLO-retract', 225],
  ])('%s at 78.6 t', (text, expected) => expect(kt(text)).toBe(expected));
  test('the clean speed of the reference: 198 kt at 66.8 t, 166 kt at 46 t, ±1 kt', () => {
    expect(kt('clean speed', { weight: 66_800 })).toBeCloseTo(198, 0);
    expect(kt('clean speed', { weight: 46_000 })).toBeCloseTo(166, 0);
  });
  test('VAPP adds half the head wind, between 5 and 20 kt', () => {
    const vref = kt('VREF F35') as number;
    for (const [wind, added] of [
      [-10, 5],
      [0, 5],
      [20, 10],
      [60, 20],
    ] as const) {
      expect(kt('VAPP F35', { weight: 78_600, wind })).toBeCloseTo(vref + added, 1);
    }
  });
  test('units become one', () => {
    const weight = gate('weight <= 70 t');
    if (weight.kind !== 'compare') throw new Error(weight.kind);
    expect(termExpression(weight.right, context)).toMatchObject({
      ok: true,
      value: { unit: 'kg', expression: { value: 70_000 } },
    });
  });
});

describe('or says why it can not', () => {
  test.each([
    ['VMM F7', 'TN-182 has no detent F7'],
    ['V2 F35', 'the sheet of TN-182 gives no V2 for F35'],
  ])('%s', (text, reason) => expect(kt(text)).toBe(reason));
  test('an altitude needs its card', () => {
    const asked = gate('altitude >= acceleration altitude');
    const without = gateCondition(asked, context);
    expect(without).toEqual({
      ok: false,
      error: 'acceleration altitude stands on the aerodrome card, and none is given',
    });
    const card = { ...context, altitudes: { 'acceleration-altitude': 3_040 } as const };
    const condition = gateCondition(asked, card);
    if (!condition.ok) throw new Error(condition.error);
    expect(prove(condition.value, [axis('altitude', 3_040, 5_000, 'ft')]).verdict).toBe('holds');
  });
  test('what is seen or heard has no number', () => {
    expect(gateCondition(gate('flaps F6 indicated'), context)).toMatchObject({ ok: false });
  });
});

test('a whole gate is proven, with a sentence', () => {
  const condition = gateCondition(gate('speed between VMM F18 and VFE F18 - 5 kt'), context);
  if (!condition.ok) throw new Error(condition.error);
  const domain = [...domainOf(sheet), axis('speed', 170, 190, 'kt')];
  expect(prove(condition.value, domain).verdict).toBe('holds');
  const retract = gateCondition(gate('speed >= VMM F0'), context);
  if (!retract.ok || retract.value.kind !== 'compare') throw new Error('a comparison is expected');
  const at180 = [...domainOf(sheet), axis('speed', 180, 180, 'kt')];
  expect(explain(retract.value, prove(retract.value, at180))).toBe('speed is below VMM F0 above 61.1 t');
});
