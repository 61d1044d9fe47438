// Proofs against a solver on the same questions, side by side in one run, start-up outside the clock; then the house's own.
import { init, killThreads } from 'z3-solver';
import { segmentGradient } from '../../lib/aircraft/climb.ts';
import { speedExpression } from '../../lib/aircraft/schedule.ts';
import { number, sub } from '../../lib/base/expression.ts';
import { compare } from '../../lib/envelope/condition.ts';
import { domainOf } from '../../lib/envelope/domain.ts';
import { prove } from '../../lib/envelope/prove.ts';
import { Questions } from '../kit/questions.ts';
import { tn182 } from '../kit/sheets.ts';
import { askSolver } from '../kit/z3-question.ts';

const QUESTIONS = 300;
const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);
const at = (list: readonly number[], share: number): number =>
  [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * share))]!;
const shown = (ms: number): string => (ms < 1 ? `${(ms * 1000).toFixed(1)} µs` : `${ms.toFixed(1)} ms`);

function timed(deed: () => unknown): number {
  const before = performance.now();
  deed();
  return performance.now() - before;
}

const api = await init();
const z3 = api.Context<string>('bench');
const warm = new Questions(1, false);
for (let i = 0; i < 300; i++) {
  const { condition, domain } = warm.one();
  prove(condition, domain);
}
await askSolver(z3, warm.one());

const questions = new Questions(1_829, false);
const asked = Array.from({ length: QUESTIONS }, () => questions.one());
// One after the other, so that neither disturbs the other. The verdict alone, which is what the solver gives too.
const answers = asked.map(({ condition, domain }) => {
  const before = performance.now();
  const { verdict } = prove(condition, domain, { quick: true });
  return { verdict, ms: performance.now() - before };
});
const ours: number[] = [];
const theirs: number[] = [];
let same = 0;
let undecided = 0;
let unknown = 0;
for (const [i, question] of asked.entries()) {
  const solver = await askSolver(z3, question);
  const { verdict, ms } = answers[i]!;
  if (solver.answer === 'unknown') unknown++;
  else if (verdict === 'undecided') undecided++;
  else {
    ours.push(ms);
    theirs.push(solver.ms);
    if (verdict === solver.answer) same++;
  }
}
await killThreads(api.em);

console.log(
  `generated questions  ${QUESTIONS}: ${same} of ${ours.length} decided by both agree, ${undecided} undecided here, ${unknown} unknown there`,
);
console.log(
  `here                 median ${shown(at(ours, 0.5))}, 95 % ${shown(at(ours, 0.95))}, all ${shown(sum(ours))}`,
);
console.log(
  `z3-solver            median ${shown(at(theirs, 0.5))}, 95 % ${shown(at(theirs, 0.95))}, all ${shown(sum(theirs))}`,
);
console.log(
  `ratio                medians ${(at(theirs, 0.5) / at(ours, 0.5)).toFixed(0)}, sums ${(sum(theirs) / sum(ours)).toFixed(0)} times`,
);

const sheet = tn182();
const domain = domainOf(sheet);
const vmm = speedExpression(sheet, { name: 'VMM', detent: 'F0', icing: false })!;
const second = segmentGradient(sheet, 'second', 'F6')!;
const typical = Array.from({ length: 500 }, (_, i) =>
  timed(() => prove(compare(vmm, '<=', number(150 + i / 5)), domain)),
);
const climbs = Array.from({ length: 20 }, (_, i) => timed(() => prove(compare(second, '>=', number(i / 8)), domain)));
// A procedure of 60 steps asks of each its ceiling and its floor: a figure against a limit, a formula against a formula.
const detents = ['F0', 'F6', 'F12', 'F18'] as const;
const step = (i: number): number => {
  const floor = speedExpression(sheet, { name: 'VMM', detent: detents[i % 4]!, icing: false })!;
  const next = speedExpression(sheet, { name: 'VFE', detent: detents[1 + (i % 3)]!, icing: false })!;
  return timed(() => {
    prove(compare(number(150 + i), '<=', sub(next, number(5))), domain);
    prove(compare(number(130 + i), '>=', floor), domain);
    prove(compare(sub(next, floor), '>=', number(20)), domain);
  });
};
const procedures = Array.from({ length: 40 }, () => sum(Array.from({ length: 60 }, (_, i) => step(i))));
console.log(
  `typical question     median ${shown(at(typical, 0.5))}, 95 % ${shown(at(typical, 0.95))} (aim: under 1 ms)`,
);
console.log(
  `climb gradient       median ${shown(at(climbs, 0.5))}, worst ${shown(at(climbs, 1))} (weight, elevation, temperature)`,
);
console.log(
  `60 steps, 180 asked  median ${shown(at(procedures, 0.5))}, worst ${shown(at(procedures, 1))} (aim: under 10 ms)`,
);
if (same !== ours.length || sum(theirs) < 100 * sum(ours)) process.exitCode = 1;
