// How many gates a second are read on one core: `node tests/bench/gate.bench.ts`. The aim is 10,000.
import { readFileSync } from 'node:fs';
import { parseGate } from '../../lib/gate/parse.ts';
import { printGate } from '../../lib/gate/print.ts';

const page = readFileSync(new URL('../../lib/gate/grammar.md', import.meta.url), 'utf8');
const texts = [...page.matchAll(/```gate\n([\s\S]*?)```/gu)].flatMap((block) => block[1]!.trim().split('\n'));

function rate(deed: (text: string) => unknown): number {
  for (let round = 0; round < 50; round++) for (const text of texts) deed(text);
  const rounds = 400;
  const from = performance.now();
  for (let round = 0; round < rounds; round++) for (const text of texts) deed(text);
  return Math.round((rounds * texts.length * 1000) / (performance.now() - from));
}

const read = rate(parseGate);
const both = rate((text) => printGate(parseGate(text).gate!));
console.log(`gates: ${read} a second read and checked, ${both} read, checked and printed (aim 10000)`);
if (read < 10_000) process.exitCode = 1;
