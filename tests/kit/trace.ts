// A flight as if it had been flown: for what is reckoned from moments alone. Tests of the engine fly for themselves.

import { type Conditions, SAMPLE_COLUMNS, type Samples, type Trace } from '../../lib/flight/trace.ts';
import { allSteps, type Procedure } from '../../lib/procedure/procedure.ts';

const CONDITIONS: Conditions = {
  ...{ weight: 48_000, elevation: 0, temperature: 0, wind: 0, windGradient: 0, enginesOut: 0, standard: 'A' },
  ...{ detent: 'F35', selectedAltitude: 3_000, missedApproachAltitude: 3_000, climbThrustHeight: 1_500 },
  ...{ accelerationHeight: 1_500, engineOutAccelerationHeight: 1_500, transitionAltitude: 10_000, minima: 200 },
  ...{ finalApproachFix: 2_000, track: 0, turnTo: 0 },
};

/** Steps by label, with the moment of their cue (and of their end, the same unless given); others are not flown. Columns as given. */
export function traceOf(
  procedure: Procedure,
  gates: Readonly<Record<string, number | readonly [number, number]>>,
  columns: Partial<Record<string, readonly number[]>> = {},
): Trace {
  const rows = Math.max(0, ...Object.values(columns).map((column) => column?.length ?? 0));
  const samples = Object.fromEntries(
    SAMPLE_COLUMNS.map(({ name }) => [name, Float64Array.from(columns[name] ?? new Array<number>(rows).fill(0))]),
  ) as Samples;
  const steps = allSteps(procedure).map((step) => {
    const given = gates[step.label] ?? gates[step.id];
    const [gate, done] = given === undefined ? [null, null] : typeof given === 'number' ? [given, given] : given;
    return { step: step.id, gate, act: gate, done, left: gate === null ? 'its gate never came true' : '' };
  });
  return {
    ...{ version: 'by hand', conditions: CONDITIONS, assumptions: [], cannot: [], detents: [], samples, events: [] },
    ...{ lines: [], transits: [], steps, problems: [], end: { time: 60, reason: 'complete', says: '' } },
  };
}
