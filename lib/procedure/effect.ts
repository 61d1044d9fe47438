// What one step does to the state: lever, gear, selectors, autopilot, and the mode line that it tells the crew to expect.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Gate } from '../gate/syntax.ts';
import { detentsIn, flapMove, flapSelections, moved } from './flaps.ts';
import { parsedCue } from './parsed-cue.ts';
import type { ExpectedArmed, ExpectedMode, Procedure, StateLine, Step } from './procedure.ts';
import { type AircraftState, type FloorPhase, type SpeedTarget, unique, withWorlds } from './state.ts';

/** What stays the same along a walk. */
export type Craft = {
  readonly procedure: Procedure;
  readonly sheet: Sheet | null;
  readonly detents: readonly string[];
};

const SAYS_NO_FIGURE = /^(as |cleared|assigned|planned|ordered)/i;

/** A speed as a step or a state line writes it: `250 kt`, `VMM F18 + 10 kt`, `clean speed`; "or as cleared" is left off. */
export function speedTarget(text: string, setBy: string): SpeedTarget {
  const bare = text.replace(/,?\s+(or|as)\s+(as\s+)?(cleared|assigned|required)\b.*$/i, '').trim();
  if (bare === '') return { kind: 'unknown' };
  if (SAYS_NO_FIGURE.test(bare)) return { kind: 'words', text: bare, setBy };
  // `rough-air speed, 265 kt or M 0.74`: the first part that is a speed is the target.
  for (const part of [bare, ...bare.split(/,\s*|\s+or\s+/)]) {
    const parsed = parsedCue(`speed = ${part}`);
    const gate = parsed.gate;
    if (parsed.problems.length > 0 || gate?.kind !== 'compare') continue;
    return { kind: 'expression', term: gate.right, text: part, setBy };
  }
  return { kind: 'words', text: bare, setBy };
}

const isEngineOut = (procedure: Procedure): boolean =>
  procedure.class === 'engine-out' || /\bengine[- ]out\b|\bone engine\b/i.test(procedure.title);

const landing = (craft: Craft): readonly string[] =>
  craft.sheet?.detents.filter((detent) => detent.use.includes('landing')).map((detent) => detent.name) ?? [];

function autopilotOf(entry: StateLine, procedure: Procedure): AircraftState['autopilot'] {
  const text = entry.autopilot.toLowerCase();
  if (/\bon\b/.test(text) && /\boff\b|hand-?flown/.test(text)) return 'either';
  if (/\boff\b|hand-?flown/.test(text)) return 'off';
  if (/\bon\b/.test(text)) return 'on';
  return text === '' && procedure.phases[0] === 'take-off' ? 'off' : 'either';
}

function firstFloor(procedure: Procedure): FloorPhase {
  const takeOff = procedure.phases.includes('take-off');
  if (takeOff) return isEngineOut(procedure) ? 'engineOut' : 'takeOff';
  return 'elsewhere';
}

/** The state in which the procedure says it begins. */
export function startOf(craft: Craft): AircraftState {
  const { entry, envelope } = craft.procedure;
  const said = (entry.flaps.length > 0 ? entry.flaps : envelope.detents).filter((name) => craft.detents.includes(name));
  const flaps = said.length > 0 ? said : craft.detents;
  const state: AircraftState = {
    worlds: [],
    selected: [],
    indicated: [],
    flapsKnown: said.length > 0,
    gear: entry.gear === '' ? ['up', 'down'] : [entry.gear],
    floor: firstFloor(craft.procedure),
    goingAround: false,
    target: speedTarget(entry.speed, ''),
    autopilot: autopilotOf(entry, craft.procedure),
    modes: { thrust: entry.thrust, lateral: entry.lateral, vertical: entry.vertical, armed: entry.armed },
    selectedAltitude: entry.selectedAltitude,
  };
  return onFinal(
    withWorlds(
      state,
      flaps.map((name) => ({ origin: name, selected: name, indicated: [name] })),
    ),
    craft,
  );
}

/** From the acceleration altitude on the take-off is over: the lowest speed is that of everywhere else. */
export function enterPhase(state: AircraftState, parts: readonly Gate[]): AircraftState {
  if (state.floor !== 'takeOff' && state.floor !== 'engineOut') return state;
  const over = parts.some(
    (part) =>
      part.kind === 'compare' && part.right.kind === 'altitude' && /acceleration-altitude$/.test(part.right.name),
  );
  return over ? { ...state, floor: 'elsewhere' } : state;
}

function onFinal(state: AircraftState, craft: Craft): AircraftState {
  const approach = craft.procedure.phases.some((phase) => ['approach', 'landing', 'go-around'].includes(phase));
  if (!approach || state.goingAround || !state.flapsKnown) return state;
  const full = landing(craft);
  const held = state.selected.length > 0 && state.selected.every((name) => full.includes(name));
  if (held && state.floor === 'elsewhere') return { ...state, floor: 'finalApproach' };
  return !held && state.floor === 'finalApproach' ? { ...state, floor: 'elsewhere' } : state;
}

const expected = (mode: ExpectedMode, before: readonly string[]): readonly string[] => {
  if (mode === 'same' || mode === '') return before;
  return typeof mode === 'string' ? [mode] : mode;
};
function expectedArmed(armed: ExpectedArmed, before: readonly string[] | null): readonly string[] | null {
  if (armed === null || armed === 'same') return before;
  if (Array.isArray(armed)) return armed as readonly string[];
  const change = armed as { readonly add?: readonly string[]; readonly drop?: readonly string[] };
  if (before === null) return null;
  return unique([...before.filter((word) => !change.drop?.includes(word)), ...(change.add ?? [])]);
}

const turned = (step: Step, control: RegExp): boolean =>
  (step.verb === 'set' || step.verb === 'select' || step.verb === 'move') && control.test(step.object);

/** The state when the step is done and its mode line read. */
export function afterStep(before: AircraftState, step: Step, craft: Craft): AircraftState {
  let next = before;
  if (turned(step, /\bgear\b/i)) {
    const way = /\b(up|down)\b/i.exec(step.value)?.[1]?.toLowerCase();
    if (way === 'up' || way === 'down') next = { ...next, gear: [way] };
  }
  if (turned(step, /\bspeed (selector|target|window)\b|^speed$/i)) {
    next = { ...next, target: speedTarget(step.value, step.id) };
  }
  if (turned(step, /\baltitude selector\b|\bselected altitude\b/i)) next = { ...next, selectedAltitude: step.value };
  if (/\bautopilot\b/i.test(step.object)) {
    if (step.verb === 'engage') next = { ...next, autopilot: 'on' };
    if (step.verb === 'disengage') next = { ...next, autopilot: 'off' };
  }
  if (step.verb === 'press' && /\bgo-around\b/i.test(step.object)) {
    next = {
      ...next,
      goingAround: true,
      floor: isEngineOut(craft.procedure) ? 'engineOut' : 'goAroundFirstRetraction',
    };
  }
  next = onFinal(afterFlaps(next, step, craft), craft);
  const modes = {
    thrust: expected(step.expect.thrust, next.modes.thrust),
    lateral: expected(step.expect.lateral, next.modes.lateral),
    vertical: expected(step.expect.vertical, next.modes.vertical),
    armed: expectedArmed(step.expect.armed, next.modes.armed),
  };
  return { ...next, modes, target: targetOfMode(next, modes.vertical, craft) };
}

/** The first climb and the go-around bring a target of their own; it is theirs until the speed selector is turned. */
function targetOfMode(before: AircraftState, vertical: readonly string[], craft: Craft): SpeedTarget {
  const was = before.modes.vertical;
  const same = vertical.length === was.length && vertical.every((word) => was.includes(word));
  if (same || vertical.length !== 1 || before.target.kind === 'unknown') return before.target;
  const words = craft.sheet?.modes.targets[vertical[0]!] ?? '';
  const own = words !== '' && !/selector|keeps/i.test(words);
  return own ? { kind: 'words', text: words, setBy: '' } : before.target;
}

function afterFlaps(state: AircraftState, step: Step, craft: Craft): AircraftState {
  const said = flapSelections(step, craft.procedure, craft.detents) ?? [];
  const ends = said.filter((name) => craft.detents.includes(name));
  if (ends.length === 0) return state;
  const seen = /\bindicat/i.test(step.checkSees) ? detentsIn(step.checkSees, craft.detents) : [];
  const worlds = state.worlds.flatMap((world) =>
    ends.map((to) => {
      const next = moved(world, to, craft.detents);
      return seen.includes(to) ? { ...next, indicated: [to] } : next;
    }),
  );
  const retracts = state.selected.some((from) =>
    ends.some((to) => flapMove(from, to, craft.detents)?.way === 'retract'),
  );
  const floor: FloorPhase = retracts ? 'elsewhere' : state.floor;
  const clean = ends.every((to) => to === craft.detents[0]);
  return withWorlds({ ...state, floor, goingAround: state.goingAround && !clean }, worlds, true);
}
