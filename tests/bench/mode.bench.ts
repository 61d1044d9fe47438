// The explorer beside SPIN on one composed model of more than two million states: a go-around with every slip allowed, several
// at once, and every surprise. Then 200 random machines, and the exploration behind one edited step.
import { assert } from '../../lib/base/assert.ts';
import { compile } from '../../lib/mode/compile.ts';
import { compose } from '../../lib/mode/compose.ts';
import { explore } from '../../lib/mode/explore.ts';
import { fly } from '../../lib/mode/flights.ts';
import { graphOf } from '../../lib/mode/graph.ts';
import { promelaComposed } from '../../lib/mode/promela-composed.ts';
import { GENERAL } from '../../lib/mode/properties.ts';
import { ONE_SLIP, type Setting, settingWords } from '../../lib/mode/setting.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { procedureNames, seedProcedure } from '../kit/seed.ts';
import { tn182 } from '../kit/sheets.ts';
import { askSpin, LARGE, SPIN } from '../kit/spin.ts';
import { compared } from '../kit/spin-questions.ts';

const LEAST_STATES = 2_000_000;
const ROOM = 8_000_000;
const MACHINES = 200;
const { modes } = tn182();
const goAround = seedProcedure('go-around');
const setting: Setting = {
  ...ONE_SLIP,
  atOnce: 7,
  environment: (modes.environment ?? []).map((one) => one.name),
  believe: false,
};
const seconds = (ms: number): string => `${(ms / 1000).toFixed(2)} s`;

/** From the table to the verdicts, nothing kept from before. */
function ours() {
  const began = performance.now();
  const machine = compile(modes, 'B');
  assert(machine.ok, 'the demo table compiles');
  const graph = graphOf(machine.value);
  const composed = compose(graph, goAround, setting);
  assert(composed.ok, 'the go-around composes');
  const searched = performance.now();
  const found = explore(composed.value.system, ROOM);
  const searchEnd = performance.now();
  const bad = graph.lines.map((line) => GENERAL.map((property) => property.state!(line, graph)));
  const cases = GENERAL.map(() => 0);
  for (const key of found.states) {
    const flags = bad[composed.value.parts(key).state]!;
    for (let p = 0; p < flags.length; p += 1) if (flags[p]) cases[p]! += 1;
  }
  const end = performance.now();
  return { composed: composed.value, found, cases, search: searchEnd - searched, whole: end - began };
}

const runs = [ours(), ours(), ours()].sort((a, b) => a.whole - b.whole);
const run = runs[1]!;
const { found } = run;
assert(found.complete && found.states.length >= LEAST_STATES, `only ${found.states.length} states`);
const rate = found.edges / (run.search / 1000);
console.log(`go-around, standard B: ${settingWords(setting)}`);
console.log(
  `  ${found.states.length} states, ${found.edges} transitions; search ${seconds(run.search)}, whole ${seconds(run.whole)}`,
);
console.log(
  `  ${(rate / 1e6).toFixed(1)} million transitions a second; ${Math.round(process.memoryUsage().rss / 2 ** 20)} MiB (limit 1024)`,
);

if (SPIN) {
  const spin = askSpin(promelaComposed(run.composed), '-O2', LARGE);
  assert(spin.states === found.states.length + 1, `SPIN has ${spin.states} states`);
  const spinRate = spin.transitions / spin.search;
  console.log(`SPIN -O2: ${spin.states} states; search ${spin.search.toFixed(2)} s, whole ${spin.whole.toFixed(2)} s`);
  console.log(`  transitions a second: ${(rate / spinRate).toFixed(1)} times SPIN's (wanted: 3)`);
  console.log(`  table to verdict: ${((spin.whole * 1000) / run.whole).toFixed(1)} times faster (wanted: 5)`);
  for (let seed = 1; seed <= MACHINES; seed += 1) {
    const { ours: mine, spins } = compared(seed);
    assert(mine[0] === spins[0] && mine[1] === spins[1], `machine ${seed}: ${mine} here, ${spins} by SPIN`);
  }
  console.log(`${MACHINES} random machines: the same states and verdicts`);
}

/** One letter of a step's wording changed, as while typing: everything but the machine is made anew. */
const edited = (procedure: Procedure, round: number): Procedure => ({
  ...procedure,
  steps: procedure.steps.map((step, i) =>
    i === round % procedure.steps.length ? { ...step, note: `${round}` } : step,
  ),
});
for (const name of procedureNames()) {
  const procedure = seedProcedure(name);
  const times: number[] = [];
  for (let round = 0; round < 15; round += 1) {
    const before = performance.now();
    fly(modes, edited(procedure, round), ONE_SLIP);
    times.push(performance.now() - before);
  }
  times.sort((a, b) => a - b);
  console.log(`${name}, one edited step, one slip, both standards: p50 ${times[7]!.toFixed(1)} ms (limit 100)`);
}
