// Six whole flights twice over: as procedures that our engine flies, and as stages for an independent program (scipy-flight.py)
// that is told the laws and what ends each stage, never when.
import { execFileSync, spawnSync } from 'node:child_process';
import { flyProcedure } from '../../lib/flight/fly.ts';
import { APPROACH, ENGINE_OUT, FLIGHT, GO_AROUND, type Settings, TAKE_OFF } from '../../lib/flight/settings.ts';
import { conditionsFor } from '../../lib/flight/start.ts';
import type { Conditions, Trace } from '../../lib/flight/trace.ts';
import { procedureWith } from '../../lib/procedure/build.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { seedProcedure } from '../kit/seed.ts';
import { housePolicy, tn182 } from '../kit/world.ts';
import { triggerApproach } from './trigger-approach.ts';

type Stage = { readonly law: Readonly<Record<string, unknown>>; readonly until: readonly (readonly unknown[])[] };
export type Pair = {
  readonly name: string;
  readonly procedure: Procedure;
  readonly given: Partial<Conditions> & { readonly weight: number };
  readonly settings: Settings;
  readonly start: { height: number; speed: string | number; rate: number | 'glide'; timesIdle: number | null };
  readonly stages: readonly Stage[];
};

const CLEAN = 'speed >= 250 kt and flaps F0 indicated';
const CLIMB_RATE = (6 * 60) / 0.3048;
const first = (target: string, load = 0.1) => ({
  path: 'speed',
  target,
  load,
  thrust: 'take-off',
  lag: null,
  limit: 'take-off',
});
const UP = { up: 1.8, down: 1.5 };
const LAG = [UP.up, UP.down];

/** Two take-offs: the heights of the gates, the detents as their speeds come. */
const takeOff = (name: string, detent: string, given: Pair['given'], rest: readonly string[], sideways = {}): Pair => ({
  name,
  procedure: seedProcedure('normal-take-off'),
  given: { ...given, detent, climbThrustHeight: 1500, accelerationHeight: 3000, selectedAltitude: 20_000, ...sideways },
  settings: { ...TAKE_OFF, end: CLEAN },
  start: { height: 35, speed: `V2 ${detent} +15`, rate: CLIMB_RATE, timesIdle: null },
  stages: [
    { law: { ...first(`V2 ${detent} +15`), detent, gear: true }, until: [['time', 15]] },
    { law: { gear: false }, until: [['above', 1500]] },
    { law: { thrust: 'climb' }, until: [['above', 3000]] },
    ...rest.map((next, index) => ({
      law: { path: 'share', ...(index === 0 ? {} : { detent: rest[index - 1] }) },
      until: [['faster', `VMM ${next}`]],
    })),
    { law: { detent: 'F0' }, until: [['faster', 250]] },
  ],
});

const levelSteps = [
  { label: 'A', cue: 'speed > 0 kt', verb: 'set' as const, object: 'altitude selector', value: '13 000 ft' },
  { label: 'B', cue: 'after A', verb: 'press' as const, object: 'ASCENT' },
  { label: 'C', cue: 'vertical = LEVEL and after B', verb: 'press' as const, object: 'HEADING', value: '090' },
];

export const PAIRS: readonly Pair[] = [
  takeOff('heavy take-off, standard day', 'F12', { weight: 78_600 }, ['F6', 'F0']),
  takeOff('take-off from a hot and high place into a growing wind', 'F18', { weight: 60_000 }, ['F12', 'F6', 'F0'], {
    elevation: 5430,
    temperature: 25,
    wind: 15,
    windGradient: 3,
  }),
  {
    name: 'go-around with a level-off 3 000 ft up',
    procedure: seedProcedure('go-around'),
    given: { weight: 48_000, climbThrustHeight: 60_000, accelerationHeight: 60_000, selectedAltitude: 3000 },
    settings: { ...GO_AROUND, omit: ['GA-14', 'GA-15'], end: 'vertical = LEVEL' },
    start: { height: 200, speed: 'VREF F35 +5', rate: 'glide', timesIdle: 3.5 },
    stages: [
      {
        law: {
          ...first('VREF F35 +15', 0.15),
          thrust: 'go-around',
          limit: 'go-around',
          lag: LAG,
          detent: 'F35',
          gear: true,
        },
        until: [['time', 6]],
      },
      { law: { detent: 'F18' }, until: [['time', 21]] },
      { law: { gear: false }, until: [['capture', 3000]] },
      { law: { path: 'capture', altitude: 3000 }, until: [['for', 1]] },
      { law: { thrust: 'steady' }, until: [['above', 2980]] },
    ],
  },
  {
    name: 'approach by triggers with a tail wind',
    procedure: triggerApproach('base'),
    given: { weight: 58_000, wind: -10 },
    settings: { ...APPROACH, end: 'flaps F35 selected and gear down selected and speed <= VAPP + 10 kt' },
    start: { height: 3000, speed: 200, rate: 0, timesIdle: null },
    stages: [
      {
        law: {
          path: 'glide',
          target: null,
          load: 0.1,
          thrust: 'idle',
          limit: 'take-off',
          lag: null,
          detent: 'F6',
          gear: false,
        },
        until: [
          ['below', 2700],
          ['slower', 205],
        ],
      },
      {
        law: { detent: 'F12' },
        until: [
          ['below', 2300],
          ['slower', 190],
          ['for', 5],
        ],
      },
      {
        law: { detent: 'F18' },
        until: [
          ['below', 2000],
          ['slower', 245],
          ['for', 5],
        ],
      },
      {
        law: { gear: true },
        until: [
          ['below', 1700],
          ['slower', 173],
          ['for', 2],
        ],
      },
      {
        law: { detent: 'F26' },
        until: [
          ['below', 1400],
          ['slower', 159],
          ['for', 5],
        ],
      },
      { law: { detent: 'F35' }, until: [['slower', 'VREF F35 +15']] },
    ],
  },
  {
    name: 'one engine out, hot and high: climb, level acceleration, climb',
    procedure: seedProcedure('engine-out-take-off'),
    given: {
      weight: 71_000,
      detent: 'F6',
      elevation: 5430,
      temperature: 25,
      engineOutAccelerationHeight: 1500,
      climbThrustHeight: 60_000,
      accelerationHeight: 60_000,
      selectedAltitude: 20_000,
    },
    settings: { ...ENGINE_OUT, end: 'height >= 2 000 ft AAL' },
    start: { height: 35, speed: 'V2 F6', rate: 0, timesIdle: null },
    stages: [
      { law: { ...first('V2 F6'), detent: 'F6', gear: false }, until: [['above', 1500]] },
      { law: { path: 'level', altitude: 6930 }, until: [['faster', 'VMM F0']] },
      { law: { detent: 'F0', target: 'VMM F0 +10' }, until: [['faster', 'VMM F0 +10']] },
      { law: { path: 'speed', thrust: 'continuous' }, until: [['above', 2000]] },
    ],
  },
  {
    name: 'climb, level-off and turn across the wind, with the lag of the engines',
    procedure: procedureWith({ phases: ['cruise'], steps: levelSteps }),
    given: { weight: 66_000, wind: 30, windGradient: 1, temperature: -10, turnTo: 90 },
    settings: {
      ...FLIGHT,
      start: { ...FLIGHT.start, height: 10_000, speed: '250 kt', detent: 'F0' },
      reaction: 'none',
      end: '60 s after C',
    },
    start: { height: 10_000, speed: 250, rate: 0, timesIdle: null },
    stages: [
      // Level with a governed thrust for no time at all: the engines begin from there.
      {
        law: {
          path: 'level',
          altitude: 10_000,
          target: 250,
          load: 0.1,
          thrust: 'govern',
          limit: 'take-off',
          lag: LAG,
          detent: 'F0',
          gear: false,
        },
        until: [['time', 0]],
      },
      { law: { path: 'speed', thrust: 'climb' }, until: [['capture', 13_000]] },
      { law: { path: 'capture', altitude: 13_000, thrust: 'govern', limit: 'climb' }, until: [['above', 12_980]] },
      { law: { path: 'level', heading: Math.PI / 2 }, until: [['for', 60]] },
    ],
  },
];

const facts = { sheet: tn182, policy: housePolicy };
export const conditionsOf = (pair: Pair): Conditions => conditionsFor(pair.procedure, facts, pair.given);
export const flown = (pair: Pair, more: Partial<Settings> = {}): Trace =>
  flyProcedure(pair.procedure, facts, conditionsOf(pair), { ...pair.settings, ...more });

function sheetNumbers() {
  const { drag, thrust, limits, detents } = tn182;
  return {
    area: drag.wingArea.value,
    cd0: drag.cd0.value,
    gear: drag.gear.value,
    engineOut: drag.engineOut.value,
    wave: [drag.wave.factor, drag.wave.fromMach],
    detents: Object.fromEntries(
      detents.map((one) => [one.name, { cd0: one.drag.cd0, k: one.drag.k, clMax: one.clMax?.value }]),
    ),
    engines: thrust.engines,
    static: thrust.static.value,
    power: thrust.densityPower.value,
    lapse: thrust.mach.polynomial,
    flat: thrust.flatRatedTo.value,
    loss: thrust.lossPerDegree.value,
    climbAt: thrust.climbRating.at,
    climbGives: thrust.climbRating.gives,
    continuous: thrust.maximumContinuous.value,
    idle: [thrust.idle.fraction, thrust.idle.perMach],
    vmca: limits.vmca.value,
  };
}

export const SCIPY = spawnSync('python3', ['-c', 'import scipy.integrate']).status === 0;
if (!SCIPY) console.log('python3-scipy is not installed here: its flights were not compared (skipped)');

export type Answer = {
  readonly rows: readonly (readonly [number, number, number, number, number, number])[];
  readonly ends: readonly number[];
  readonly seconds: number;
  readonly evaluations: number;
};
/** What SciPy makes of the pairs, at a tolerance. */
export function askScipy(
  pairs: readonly Pair[],
  tolerance: { rtol: number; atol: number; maxStep: number; method: string },
): readonly Answer[] {
  const sheet = sheetNumbers();
  const document = pairs.map((pair) => {
    const { weight, elevation, temperature, wind, windGradient, enginesOut, track } = conditionsOf(pair);
    const conditions = {
      weight,
      elevation,
      temperature,
      wind,
      windGradient,
      enginesOut,
      track: (track * Math.PI) / 180,
    };
    return { sheet, conditions, start: pair.start, stages: pair.stages, ...tolerance };
  });
  const program = new URL('scipy-flight.py', import.meta.url).pathname;
  const out = execFileSync('python3', [program], { input: JSON.stringify(document), maxBuffer: 2 ** 26 });
  return JSON.parse(out.toString()) as readonly Answer[];
}
