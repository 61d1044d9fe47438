// Short procedures that fly: an entry each, at one or two weights, so that a table of cases stays quick.
import type { ProcedureParts, StepParts } from '../../lib/procedure/build.ts';

type More = Omit<ProcedureParts, 'steps'>;
const at = (...weights: readonly number[]) => ({ weight: { from: weights[0]!, to: weights.at(-1)! } });
type Lever = Pick<StepParts, 'cue'> & StepParts;

export const takeOff = (steps: readonly StepParts[], more: More = {}): ProcedureParts => ({
  phases: ['take-off', 'climb'],
  exit: { flaps: ['F0'] },
  ...more,
  envelope: { ...at(50_000), detents: ['F12'], ...more.envelope },
  entry: { flaps: ['F12'], gear: 'down', ...more.entry },
  steps,
});

export const approach = (steps: readonly StepParts[], more: More = {}): ProcedureParts => ({
  phases: ['approach', 'landing'],
  exit: { flaps: ['F35'], gear: 'down' },
  ...more,
  envelope: { ...at(58_000), detents: ['F35'], ...more.envelope },
  entry: {
    ...{ flaps: ['F6'], gear: 'up', speed: '200 kt', thrust: ['IDLE'], lateral: ['COURSE'], vertical: ['GLIDE'] },
    ...more.entry,
  },
  steps,
});

/** Presses GO-AROUND, then what is given. */
export const goAround = (steps: readonly StepParts[], more: More = {}, press: StepParts = {}): ProcedureParts => ({
  phases: ['approach', 'go-around'],
  exit: { flaps: ['F35'] },
  ...more,
  envelope: { ...at(48_000), ...more.envelope },
  entry: {
    ...{ flaps: ['F35'], gear: 'down', thrust: ['GOVERN'], lateral: ['COURSE'], vertical: ['GLIDE'] },
    ...more.entry,
  },
  steps: [
    { cue: 'event "gate not met"', who: 'PF', verb: 'press', object: 'GO-AROUND switch', expect: LIFT, ...press },
    ...steps,
  ],
});
const LIFT = { vertical: 'LIFT' };

export const flap = (value: string, cue: string): Lever => ({
  ...{ cue, who: 'PM', verb: 'select', object: 'flap lever', value },
});
export const gear = (value: 'UP' | 'DOWN', cue: string): Lever => ({
  ...{ cue, who: 'PM', verb: 'move', object: 'gear lever', value },
});
const below = (height: string, detent: string) =>
  flap(detent, `height <= ${height} ft AAL and speed <= VFE ${detent} - 5 kt`);
/** The gear, then four detents: stable above the gate at every weight, also with 10 kt tail wind. */
export const GEAR_FIRST: readonly StepParts[] = [
  gear('DOWN', 'height <= 2 900 ft AAL'),
  below('2 700', 'F12'),
  below('2 500', 'F18'),
  below('2 200', 'F26'),
  below('1 900', 'F35'),
];
/** The same with the gear third: not stable at the gate at 58 t. */
export const FLAP_FIRST: readonly StepParts[] = [
  below('2 700', 'F12'),
  below('2 300', 'F18'),
  gear('DOWN', 'height <= 2 000 ft AAL'),
  below('1 700', 'F26'),
  below('1 400', 'F35'),
];
export const read = (cue: string, say = 'go-around, straight, lift'): StepParts => ({
  ...{ cue, who: 'PM', verb: 'read', object: 'mode line', say },
});
export const radio = (cue: string): StepParts => ({
  ...{ cue, who: 'PM', verb: 'call', object: 'radio', say: '(radio) going around' },
});
/** Not flown: the reason that every check of flights then gives. */
export const EN_ROUTE = { procedure: { phases: ['cruise'] }, because: 'no cruise is flown' } as const;
