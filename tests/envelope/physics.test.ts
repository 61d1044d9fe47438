import { expect, test } from 'vitest';
import { climbRateExpression, gradientExpression } from '../../lib/aircraft/climb.ts';
import { machOfSpeed, speedOfMach } from '../../lib/aircraft/mach.ts';
import type { Rating, Setting } from '../../lib/aircraft/performance.ts';
import { speedExpression } from '../../lib/aircraft/schedule.ts';
import { add, type Expression, evaluate, mul, number, variable } from '../../lib/base/expression.ts';
import { type Compare, compare, marginOf } from '../../lib/envelope/condition.ts';
import { axis, type Domain } from '../../lib/envelope/domain.ts';
import { prove } from '../../lib/envelope/prove.ts';
import { chance } from '../kit/questions.ts';
import { tn182 } from '../kit/sheets.ts';

const QUESTIONS = 200;
const SAMPLES = 100;
/** Of a margin computed in doubles, in per cent or knots; far above rounding, far below anything that matters. */
const HAIR = 1e-7;

const sheet = tn182();
const next = chance(1_225);
const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!;
const between = (from: number, to: number): number => from + next() * (to - from);

function expression(): readonly [Expression, number, number] {
  const detent = pick(['F0', 'F6', 'F12', 'F18'] as const);
  const rating = pick<Rating>(['take-off', 'climb', 'continuous', 'idle']);
  const setting: Setting = { detent, gear: pick(['up', 'down'] as const), enginesOut: pick([0, 1]), rating };
  const vmm = speedExpression(sheet, { name: 'VMM', detent, icing: false })!;
  const speed = pick([vmm, add(vmm, number(10)), number(220)]);
  switch (pick([0, 0, 1, 2, 3])) {
    case 0:
      return [gradientExpression(sheet, setting, speed), -8, 18];
    case 1:
      return [climbRateExpression(sheet, setting, speed), -2_000, 4_500];
    case 2:
      return [mul(number(100), machOfSpeed(speed, variable('elevation'))), 20, 40];
    default:
      return [speedOfMach(number(between(0.5, 0.8)), variable('elevation')), 300, 530];
  }
}

function question(): { condition: Compare; domain: Domain } {
  const [left, low, high] = expression();
  const weight = between(46_000, 70_000);
  const elevation = between(0, 5_000);
  const temperature = between(-40, 20);
  const domain = [
    axis('weight', weight, between(weight, 78_600), 'kg'),
    axis('elevation', elevation, between(elevation, 8_000), 'ft'),
    axis('temperature', temperature, between(temperature, 35), '°C'),
  ];
  return {
    condition: compare(left, pick(['>=', '<='] as const), number(Math.round(between(low, high) * 10) / 10)),
    domain,
  };
}

test(`${QUESTIONS} questions of thrust, drag and air: no sample says otherwise`, { timeout: 300_000 }, () => {
  const count = { holds: 0, fails: 0, undecided: 0 };
  const broken: unknown[] = [];
  for (let i = 0; i < QUESTIONS; i++) {
    const { condition, domain } = question();
    const proof = prove(condition, domain, { quick: i % 4 > 0 });
    count[proof.verdict]++;
    const { margin } = marginOf(condition);
    for (let k = 0; k < SAMPLES; k++) {
      const at = Object.fromEntries(domain.map(({ name, from, to }) => [name, between(from, to)]));
      const value = evaluate(margin, at);
      if (proof.verdict === 'holds' && value < Math.min(0, proof.least) - HAIR) broken.push({ condition, at, value });
      // The worst witness of a full answer is the worst of all.
      if (proof.verdict === 'fails' && i % 4 === 0 && value < proof.worst - 1e-3 * Math.max(1, Math.abs(proof.worst)))
        broken.push({ proof, at, value });
    }
    if (proof.verdict === 'fails' && !(evaluate(margin, proof.witness) < HAIR)) broken.push({ proof });
  }
  expect(broken).toEqual([]);
  expect(count.holds).toBeGreaterThan(QUESTIONS / 8);
  expect(count.fails).toBeGreaterThan(QUESTIONS / 8);
  expect(count.undecided).toBeLessThanOrEqual(QUESTIONS * 0.02);
});
