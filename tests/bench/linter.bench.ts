// A library of 1,000 procedures of 60 steps, checked by all checks on text and numbers that run up to submission, side by side
// with markdownlint 0.42.1 (a general linter) on the same library printed as Markdown. One core, one process, turn by turn,
// processor time. The checks that explore the mode logic are measured on the side, on the first batch.
import { lint } from 'markdownlint/sync';
import { checkProcedure } from '../../lib/check/check.ts';
import { rulesUpTo } from '../../lib/check/stage.ts';
import { houseFacts } from '../kit/world.ts';
import { markdownOf } from './markdown.ts';
import { sixtySteps } from './sixty.ts';

const PROCEDURES = 1_000;
const BATCH = 50;
const GIB = 1024 ** 3;

const all = rulesUpTo('submission');
const rules = all.filter((rule) => /^[TN/]+$/.test(rule.kind));
const library = Array.from({ length: PROCEDURES }, (_, index) => sixtySteps(index));
let lines = 0;
const spent = (work: () => void): number => {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1_000;
};

const ours: number[] = [];
const theirs: number[] = [];
let found = 0;
let most = 0;
for (let from = 0; from < PROCEDURES; from += BATCH) {
  ours.push(
    spent(() => {
      for (const procedure of library.slice(from, from + BATCH))
        found += checkProcedure(procedure, houseFacts, rules).findings.length;
    }),
  );
  const printed = library.slice(from, from + BATCH).map(markdownOf);
  lines += printed.reduce((total, text) => total + text.split('\n').length, 0);
  theirs.push(
    spent(() => {
      for (const text of printed) lint({ strings: { text } });
    }),
  );
  most = Math.max(most, process.memoryUsage().rss);
}
const sum = (times: readonly number[]): number => times.reduce((total, each) => total + each, 0);
const [checked, linted] = [sum(ours), sum(theirs)];
console.log(`library of ${PROCEDURES} procedures of 60 steps, ${rules.length} checks, ${found} findings`);
console.log(
  `  checked in ${(checked / 1_000).toFixed(1)} s of processor, ${(checked / PROCEDURES).toFixed(1)} ms a procedure (aim: 10 ms)`,
);
console.log(
  `  markdownlint on its ${lines} lines of Markdown: ${(linted / 1_000).toFixed(1)} s; ratio ${(linted / checked).toFixed(2)} (wanted: at least 1)`,
);
console.log(`  most memory of the process ${(most / GIB).toFixed(2)} GiB (wanted: under 1)`);
const whole = spent(() => {
  for (const procedure of library.slice(0, BATCH)) checkProcedure({ ...procedure }, houseFacts);
});
console.log(
  `  with the exploration of the mode logic, ${all.length} checks: ${(whole / BATCH).toFixed(1)} ms a procedure`,
);
