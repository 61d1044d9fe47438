// The explorer beside SPIN, which shares nothing with it but the table: the same states, the same verdicts.
import { expect, test } from 'vitest';
import { compose } from '../../lib/mode/compose.ts';
import { explore } from '../../lib/mode/explore.ts';
import { machineOf } from '../../lib/mode/flights.ts';
import { promela } from '../../lib/mode/promela.ts';
import { promelaComposed } from '../../lib/mode/promela-composed.ts';
import { GENERAL, judge } from '../../lib/mode/properties.ts';
import { ONE_SLIP } from '../../lib/mode/setting.ts';
import { seedProcedure } from '../kit/seed.ts';
import { tn182 } from '../kit/sheets.ts';
import { askSpin, SPIN } from '../kit/spin.ts';
import { compared } from '../kit/spin-questions.ts';

const MACHINES = 40;
const { modes } = tn182();
const graph = (standard: string) => {
  const made = machineOf(modes, standard);
  if (!('lines' in made)) throw new Error(JSON.stringify(made));
  return made;
};

test.skipIf(!SPIN).each(['A', 'B'])('the demo table, standard %s', { timeout: 60_000 }, (standard) => {
  const ours = graph(standard);
  const climbing = modes.climbing.map((word) => `ve == ${modes.vertical.indexOf(word)}`).join(' || ');
  const never = `ph != ${modes.phase.indexOf('ground')} && (${climbing}) && rel == ${modes.rel.indexOf('above')} && (av & 1) == 0`;
  const spin = askSpin(promela(modes, standard, never));
  const [verdict] = judge(ours, GENERAL);
  expect([spin.states, spin.errors]).toEqual([ours.lines.length + 1, verdict!.cases]);
});

// Two initial states are chosen on two edges, and the process begins with one more; each state of the 50 has one edge to the
// assertion: none is asked here, so that the edges are those of the table alone.
test.skipIf(!SPIN).each(['A', 'B'])('every edge of the demo table, standard %s', { timeout: 60_000 }, (standard) => {
  expect(askSpin(promela(modes, standard)).transitions).toBe(graph(standard).found.edges + modes.initial.length + 1);
});

test.skipIf(!SPIN)(`${MACHINES} random machines with planted faults`, { timeout: 600_000 }, () => {
  let found = 0;
  for (let seed = 1; seed <= MACHINES; seed += 1) {
    const { ours, spins } = compared(seed);
    expect([seed, ...spins]).toEqual([seed, ...ours]);
    if (ours[1] > 0) found += 1;
  }
  // The question has both answers.
  expect(found).toBeGreaterThan(MACHINES / 4);
  expect(found).toBeLessThan(MACHINES);
});

test.skipIf(!SPIN).each(['climb-altitude-change', 'weather-deviation', 'go-around'])(
  '%s composed with the table, any one slip',
  { timeout: 120_000 },
  (name) => {
    const composed = compose(graph('B'), seedProcedure(name), { ...ONE_SLIP, believe: false });
    if (!composed.ok) throw new Error(JSON.stringify(composed.error));
    const ours = explore(composed.value.system);
    expect(askSpin(promelaComposed(composed.value)).states).toBe(ours.states.length + 1);
  },
);
