// From the mode line to the law of motion: what each word of the vertical and the thrust axis makes the aircraft do (D2, D5.3).
import type { Rating } from '../aircraft/performance.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import type { Law, PathLaw } from './motion.ts';
import type { Settings } from './settings.ts';
import type { Speeds } from './speeds.ts';
import type { Conditions, ModeLine } from './trace.ts';

/** Words of the vertical axis that give the speed to pitch. ASCENT accelerates first: see `accelerating`. */
const ON_PITCH: ReadonlySet<string> = new Set(['DEPART', 'ASCENT', 'DESCENT', 'LIFT', 'PITCH']);
const PATHS: Readonly<Record<string, PathLaw>> = {
  'RATE-UP': 'rate',
  'RATE-DN': 'rate',
  CONTOUR: 'rate',
  FLARE: 'rate',
  CAPTURE: 'capture',
  LEVEL: 'level',
  GLIDE: 'glide',
};
const RATINGS: Readonly<Record<string, Rating>> = {
  TAKEOFF: 'take-off',
  CLIMB: 'climb',
  GOAROUND: 'go-around',
  IDLE: 'idle',
};
/** Vertical modes whose target the guidance sets by itself; in all others it is the speed selector, or what was there. */
const OWN_TARGET: ReadonlySet<string> = new Set(['DEPART', 'LIFT']);
const KEEPS: ReadonlySet<string> = new Set(['CAPTURE', 'LEVEL', 'FLARE']);

/** Whether the law is on pitch for this word; a word that nobody knows keeps its path. */
export const onPitch = (vertical: string): boolean => ON_PITCH.has(vertical);

/** Path and thrust for a line. `hand`: thrust that a hand has set, where the guidance leaves it alone. */
export function steer(
  law: Law,
  line: ModeLine,
  state: {
    readonly hand: Rating | 'steady' | null;
    readonly governs: boolean;
    readonly turned: boolean;
    readonly idleFirst: boolean;
    readonly accelerating: boolean;
    readonly settings: Settings;
  },
): void {
  const { settings } = state;
  const rating = RATINGS[line.thrust];
  if (rating !== undefined) {
    law.thrust = 'rating';
    law.rating = rating;
  } else if (line.thrust === 'GOVERN') {
    if (state.idleFirst) {
      law.thrust = 'rating';
      law.rating = 'idle';
    } else if (state.governs) {
      law.limit = law.rating === 'idle' ? 'go-around' : law.rating;
      law.thrust = settings.govern === 'target' || state.turned ? 'govern' : 'steady';
    }
  } else if (state.hand === 'steady') law.thrust = 'steady';
  else if (state.hand !== null) {
    law.thrust = 'rating';
    law.rating = state.hand;
  }
  const governed = law.thrust === 'govern';
  if (onPitch(line.vertical)) {
    // Two that hold one speed would fight: with a governed thrust the path stays as it is.
    law.path = governed ? 'rate' : line.vertical === 'ASCENT' && state.accelerating ? 'share' : 'speed';
  } else law.path = PATHS[line.vertical] ?? 'rate';
}

/** Speed target, kt, when a vertical word comes; `kept` where it changes nothing. */
export function targetOf(
  sheet: Sheet,
  speeds: Speeds,
  settings: Settings,
  conditions: Conditions,
  line: ModeLine,
  now: { readonly speed: number; readonly selector: number; readonly kept: number },
): number {
  const own = settings.targets[line.vertical];
  if (own !== undefined) return speeds.of(own.over, null) + own.plus;
  if (KEEPS.has(line.vertical)) return now.kept;
  if (!OWN_TARGET.has(line.vertical)) return now.selector;
  const v2 = speeds.of('V2', null);
  if (line.vertical === 'DEPART') {
    const most = v2 + sheet.guidance.departTarget.value;
    return conditions.enginesOut > 0 ? Math.max(v2, Math.min(most, now.speed)) : most;
  }
  if (conditions.enginesOut > 0) return v2;
  const most = speeds.of('VREF', null) + sheet.guidance.liftTargetMost.value;
  return Math.min(most, Math.max(speeds.of('VAPP', null), now.speed));
}
