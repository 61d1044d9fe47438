// How much of the processor one whole check takes (its own time, so that other work on the machine does not count): 60 steps made of the demo operator's own, all rules, the whole envelope.
import { readdirSync, readFileSync } from 'node:fs';
import { checkProcedure } from '../../lib/check/check.ts';
import { rules } from '../../lib/check/rules/index.ts';
import { readProcedureFile } from '../../lib/file/procedure-file.ts';
import type { Procedure, StepId } from '../../lib/procedure/procedure.ts';
import { housePolicy, tn182 } from '../kit/world.ts';

const folder = new URL('../../seed/procedures/', import.meta.url);
const STEPS = 60;

function sixty(): Procedure {
  const all = readdirSync(folder).flatMap((name): Procedure[] => {
    const read = readProcedureFile(readFileSync(new URL(name, folder), 'utf8'), name);
    return read.ok ? [read.value] : [];
  });
  const first = all.find((procedure) => procedure.phases.includes('take-off'))!;
  const others = all.filter((procedure) => procedure !== first).flatMap((procedure) => procedure.steps);
  const steps = [...first.steps, ...others].slice(0, STEPS);
  return { ...first, steps: steps.map((step, index) => ({ ...step, id: `b${index}` as StepId })) };
}

const facts = { sheet: tn182, policy: housePolicy };
const procedure = sixty();
const ROUNDS = 300;
const shown = (ms: number): string => `${ms.toFixed(2)} ms`;

const times: number[] = [];
for (let round = 0; round < ROUNDS; round++) {
  // A fresh object each time, so that nothing kept by identity helps.
  const asked = { ...procedure, steps: procedure.steps.map((step) => ({ ...step })) };
  const before = process.cpuUsage();
  checkProcedure(asked, facts);
  const spent = process.cpuUsage(before);
  times.push((spent.user + spent.system) / 1_000);
}
const warm = times.slice(ROUNDS / 10).sort((a, b) => a - b);
const at = (share: number): number => warm[Math.floor(warm.length * share)]!;
console.log(`check of ${procedure.steps.length} steps, ${rules.length} rules: first ${shown(times[0]!)}`);
console.log(`  then p50 ${shown(at(0.5))}, p95 ${shown(at(0.95))} (aim: under 10 ms)`);
