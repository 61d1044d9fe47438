// What each check of text and figures finds of the defects planted for it, and how often it cries over harmless rewordings:
// `node tests/bench/planted.bench.ts`. Fails when a planted defect is missed or a rewording is stopped.
import { alarms, MEANT, plant } from '../kit/planted/suite.ts';

const REWORDINGS = 504;

const cries = alarms(0, REWORDINGS);
const found = MEANT.map((check) => ({ ...plant(check), alarms: cries.filter((each) => each.check === check).length }));
console.log(`${'check'.padEnd(34)} planted  found  procedures  second sheet  false alarms of ${REWORDINGS}`);
for (const { check, mutants, missed, procedures, onOther, alarms: wrongly } of found) {
  const figures = [mutants, mutants - missed.length, procedures, onOther, wrongly];
  const widths = [7, 6, 11, 13, 22];
  console.log(`${check.padEnd(34)} ${figures.map((figure, at) => String(figure).padStart(widths[at]!)).join(' ')}`);
}
const sum = (of: (each: (typeof found)[number]) => number): number => found.reduce((all, each) => all + of(each), 0);
const missed = sum((each) => each.missed.length);
const stops = cries.filter(({ severity }) => severity === 'STOP').length;
console.log(
  `${MEANT.length} checks: ${sum((each) => each.mutants) - missed} of ${sum((each) => each.mutants)} planted defects found`,
);
console.log(`${REWORDINGS} harmless rewordings: ${stops} stopped, ${cries.length} findings that were not there before`);
if (missed > 0 || stops > 0) process.exitCode = 1;
