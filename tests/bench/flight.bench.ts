// How long a flight takes, and a sweep of many; and the same six flights by SciPy, side by side. Times are of the processor, so
// that other work on the machine does not count; SciPy's are its own clock around the integration alone.
import { flyProcedure } from '../../lib/flight/fly.ts';
import { stableHeight } from '../../lib/flight/measures.ts';
import { conditionsFor, settingsFor } from '../../lib/flight/start.ts';
import { sweep, sweepAll, weightsOf } from '../../lib/flight/sweep.ts';
import { askScipy, flown, PAIRS, SCIPY } from '../flight/scipy-flights.ts';
import { triggerApproach } from '../flight/trigger-approach.ts';
import { seedProcedure } from '../kit/seed.ts';
import { housePolicy, tn182 } from '../kit/world.ts';

const facts = { sheet: tn182, policy: housePolicy };
const shown = (ms: number): string => `${ms.toFixed(2)} ms`;

function spent(run: () => void): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
function many(rounds: number, run: () => void): { first: number; median: number; p95: number } {
  const times = Array.from({ length: rounds }, () => spent(run));
  const warm = times.slice(Math.floor(rounds / 10)).sort((a, b) => a - b);
  const at = (share: number): number => warm[Math.floor(warm.length * share)]!;
  return { first: times[0]!, median: at(0.5), p95: at(0.95) };
}

const takeOff = seedProcedure('normal-take-off');
const clean = { ...settingsFor(takeOff, tn182), end: 'speed >= 250 kt and flaps F0 indicated' };
for (const weight of [50_000, 66_800, 78_600]) {
  const conditions = conditionsFor(takeOff, facts, { weight, accelerationHeight: 3000 });
  const { first, median, p95 } = many(400, () => flyProcedure(takeOff, facts, conditions, clean));
  const tonnes = (weight / 1000).toFixed(1);
  console.log(
    `take-off to 250 kt clean, ${tonnes} t: first ${shown(first)}, median ${shown(median)}, p95 ${shown(p95)} (aim: 2 ms)`,
  );
}

const approach = triggerApproach('base');
const settings = { ...settingsFor(approach, tn182), sampling: 0 };
const conditions = conditionsFor(approach, facts, { weight: 60_000 });
// 33 weights from the lightest to the heaviest landing, and on.
const weights = weightsOf({ from: 46_000, to: 78_000 });
const cases = { weights, winds: [-10, 0, 20], temperatures: [0, 20] };
for (const sensitive of [false, true]) {
  const run = (): void => {
    sweepAll(sweep(approach, facts, conditions, settings, { ...cases, sensitive }, stableHeight));
  };
  const { median } = many(sensitive ? 3 : 7, run);
  const aim = sensitive ? 'aim: 3 000 ms' : 'aim: 500 ms';
  const with7 = sensitive ? ', with hands, wind and drag varied' : '';
  console.log(
    `sweep of ${weights.length} weights × 3 winds × 2 temperatures, an approach${with7}: ${shown(median)} (${aim})`,
  );
}
const departures = { ...clean, sampling: 0 };
const leaving = conditionsFor(takeOff, facts, { weight: 60_000, accelerationHeight: 3000 });
const measure = {
  says: 'longest time',
  unit: 's',
  worst: 'most' as const,
  of: (trace: { end: { time: number } }) => trace.end.time,
};
for (const sensitive of [false, true]) {
  const run = (): void => {
    sweepAll(sweep(takeOff, facts, leaving, departures, { ...cases, sensitive }, measure));
  };
  console.log(`  the same of a take-off${sensitive ? ', varied' : ''}: ${shown(many(sensitive ? 3 : 7, run).median)}`);
}

type Rows = ReadonlyMap<number, number>;
const heights = (rows: readonly (readonly number[])[]): Rows => new Map(rows.map((row) => [row[0]!, row[1]!]));
const ourHeights = (tolerance: number, index: number): Rows => {
  const { time, height } = flown(PAIRS[index]!, { sampling: 1, tolerance }).samples;
  return new Map(Array.from(time, (second, row) => [second, height[row]!]));
};
/** Greatest difference at whole seconds, ft. */
const apart = (a: Rows, b: Rows): number =>
  Math.max(
    ...[...a]
      .filter(([second]) => Number.isInteger(second) && b.has(second))
      .map(([second, height]) => Math.abs(height - b.get(second)!)),
  );

if (SCIPY) {
  // Each is asked how far it is from itself at a tolerance a thousand times finer. SciPy is taken at the coarsest tolerance at
  // which it is as near to itself as the engine is; its statement has the limit of the load factor as a fast lag, and LSODA is the
  // method that suits that.
  const scipy = (tolerance: number) =>
    askScipy(PAIRS, { method: 'LSODA', rtol: tolerance, atol: tolerance, maxStep: 4 });
  const best = scipy(1e-11).map((answer) => heights(answer.rows));
  const tried = [1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9].map((tolerance) => ({ tolerance, answers: scipy(tolerance) }));
  for (const [index, pair] of PAIRS.entries()) {
    const ours = many(300, () => flown(pair, { sampling: 0 })).median;
    const error = apart(ourHeights(1e-6, index), ourHeights(1e-11, index));
    const errors = tried.map(({ answers }) => apart(heights(answers[index]!.rows), best[index]!));
    const chosen = Math.max(
      0,
      errors.findIndex((one) => one <= Math.max(error, 1e-4)),
    );
    const { tolerance, answers } = tried[chosen]!;
    const theirs = answers[index]!.seconds * 1000;
    console.log(
      `${pair.name}: ${shown(ours)} for ${error.toExponential(0)} ft; SciPy at ${tolerance} ${shown(theirs)} for ${errors[chosen]!.toExponential(0)} ft: ${(theirs / ours).toFixed(0)} times (aim: 100)`,
    );
  }
}
