// What the hand of a step does to the aircraft, read once from the step: lever, gear, selectors, thrust, modes. A step that only
// looks or speaks does nothing here.
import type { ModeSet } from '../aircraft/mode-set.ts';
import type { Term } from '../gate/syntax.ts';
import { rulesOf } from '../mode/controls.ts';
import { speedTarget } from '../procedure/effect.ts';
import { flapSelections } from '../procedure/flaps.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import { type Frame, termValue } from './margin.ts';
import type { Now } from './now.ts';

export type Deed = {
  /** Place of the detent that the lever goes to; -1: none. */
  readonly flap: number;
  readonly gear: 'up' | 'down' | null;
  readonly speed: ((now: Now) => number) | null;
  /** ft MSL. */
  readonly altitude: number | null;
  readonly rate: number | null;
  readonly thrust: 'take-off' | 'go-around' | 'continuous' | 'climb' | 'idle' | 'steady' | null;
  readonly brake: boolean | null;
  readonly autopilot: boolean | null;
  /** Turns to the course of the conditions. */
  readonly turns: boolean;
  readonly rules: readonly number[];
};

const MOVES = new Set(['set', 'select', 'move', 'press', 'arm', 'engage', 'disengage']);

/** A figure with its unit, such as `4 000 ft`, from words; null when there is none. */
const figure = (text: string): number | null => {
  const found = /(\d[\d\u00a0\u202f ]*(?:\.\d+)?)\s*(?:ft|FL)?\b/.exec(text);
  if (found === null) return null;
  const value = Number(found[1]!.replaceAll(/[\u00a0\u202f ]/g, ''));
  if (!Number.isFinite(value)) return null;
  return /\bFL\s*\d/.test(text) ? value * 100 : value;
};

function altitude(value: string, frame: Frame): number | null {
  if (/missed[- ]approach/i.test(value)) return frame.conditions.missedApproachAltitude;
  if (/\d/.test(value)) return figure(value);
  return null;
}

function thrust(step: Step): Deed['thrust'] {
  if (!/\b(thrust )?levers?\b/i.test(step.object) || !/thrust/i.test(step.object)) return null;
  const text = step.value.toLowerCase();
  if (/continuous/.test(text)) return 'continuous';
  if (/fully forward|go-around/.test(text)) return 'go-around';
  if (/take-?off/.test(text)) return 'take-off';
  if (/climb/.test(text)) return 'climb';
  if (/idle|closed/.test(text)) return 'idle';
  return /hold/.test(text) ? 'steady' : null;
}

/** What of a deed hangs on the step and the mode table alone. */
type Read = Omit<Deed, 'flap' | 'speed' | 'altitude'> & {
  readonly selections: readonly string[];
  readonly target: Term | null;
  readonly altitude: boolean;
  readonly modes: ModeSet;
};
const reads = new WeakMap<Step, Read>();

function readOf(step: Step, procedure: Procedure, modes: ModeSet, detents: readonly string[]): Read {
  const known = reads.get(step);
  if (known?.modes === modes) return known;
  const moves = MOVES.has(step.verb);
  const isGear = moves && /\bgear\b/i.test(step.object);
  const target = moves && /\bspeed selector\b/i.test(step.object) ? speedTarget(step.value, '') : null;
  const autopilot = /\bautopilot\b/i.test(step.object);
  const made: Read = {
    modes,
    selections: flapSelections(step, procedure, detents) ?? [],
    gear: !isGear ? null : /\bup\b/i.test(step.value) ? 'up' : /\bdown\b/i.test(step.value) ? 'down' : null,
    target: target?.kind === 'expression' ? target.term : null,
    altitude: moves && /\baltitude selector\b/i.test(step.object),
    rate: moves && /\brate selector\b/i.test(step.object) ? figure(step.value) : null,
    thrust: moves ? thrust(step) : null,
    brake: moves && /\bspeedbrake\b/i.test(step.object) ? /\bout\b/i.test(step.value) : null,
    autopilot: autopilot && step.verb === 'engage' ? true : autopilot && step.verb === 'disengage' ? false : null,
    turns: moves && /\b(heading|route|course)\b/i.test(step.object),
    rules: moves ? (rulesOf(modes, step) ?? []) : [],
  };
  reads.set(step, made);
  return made;
}

export function deedOf(step: Step, procedure: Procedure, modes: ModeSet, frame: Frame): Deed {
  const { selections, target, altitude: turned, ...same } = readOf(step, procedure, modes, frame.detents);
  const planned = selections.includes(frame.conditions.detent) ? frame.conditions.detent : selections[0];
  return {
    ...same,
    flap: planned === undefined ? -1 : frame.detents.indexOf(planned),
    speed: target === null ? null : termValue(frame, target, null),
    altitude: turned ? altitude(step.value, frame) : null,
  };
}
