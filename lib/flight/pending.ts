// The steps of a flight: which wait, for what, and what comes of it when one is done. A step waits for its own cue; `then` waits for
// the step before; flap and gear steps come in the listed order; what is not for this flight holds nobody up.
import type { ModeSet } from '../aircraft/mode-set.ts';
import type { Gate } from '../gate/syntax.ts';
import { variablesOf } from '../gate/variables.ts';
import { conjuncts } from '../procedure/cue.ts';
import { detentsIn } from '../procedure/flaps.ts';
import { findStep } from '../procedure/locate.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import { allSteps, type Procedure, type Step } from '../procedure/procedure.ts';
import { type Deed, deedOf } from './deed.ts';
import { type Frame, type Margin, marginOf, possible } from './margin.ts';
import type { Now } from './now.ts';
import type { Settings } from './settings.ts';

export type Waiting = {
  readonly step: Step;
  readonly deed: Deed;
  /** Flap or gear: moved by one hand, in the listed order. */
  readonly lever: 'flap' | 'gear' | null;
  readonly cue: Margin;
  /** The cue as far as events make it: below nil, only one of them can make it come true. */
  readonly could: Margin;
  /** Steps that must be over first: the one before of a `then`; for a lever all before it that this flight does. */
  readonly behind: readonly number[];
  /** What the cue says of the mode line, as far as it must hold; a step whose line is another one holds no lever up. */
  readonly line: Margin | null;
  /** Steps after which it counts seconds or miles, and how many are left, nil or more when they are over. */
  readonly counts: readonly { readonly step: string; readonly left: Margin }[];
  readonly branch: number;
  /** Where the step sends the reader, in order: the place of a step, -1 for elsewhere. */
  readonly ways: readonly { readonly when: Margin | null; readonly to: number }[];
  /** 's words, in small letters. */
  readonly words: string;
  /** Why it is not flown: '' when it is. */
  left: string;
  gate: number | null;
  act: number | null;
  done: number | null;
  times: number;
};

export type Side = { readonly when: Margin; readonly steps: readonly number[]; entered: boolean };
export type Script = {
  readonly waiting: readonly Waiting[];
  readonly branches: readonly Side[];
  /** Sentences about cues that can't be read. */
  readonly unread: readonly { readonly step: Step; readonly says: string }[];
  /** Words of `only` that were taken as so. */
  readonly taken: readonly { readonly step: Step; readonly words: string }[];
};

// What hangs on the text alone is found once: a sweep flies one procedure hundreds of times.
const spoken = new WeakMap<Procedure, string>();
const said = new WeakMap<Step, string>();
const grounds = new WeakMap<Procedure, number>();
function kept<K extends object, T>(store: WeakMap<K, T>, key: K, make: () => T): T {
  const known = store.get(key);
  if (known !== undefined) return known;
  const made = make();
  store.set(key, made);
  return made;
}

export const spokenIn = (procedure: Procedure): string =>
  kept(spoken, procedure, () =>
    allSteps(procedure)
      .map((step) => wordsOf(step))
      .join(' | '),
  );
const wordsOf = (step: Step): string =>
  kept(said, step, () => [step.orderWords, step.say, step.reply].join(' | ').toLowerCase());

const NOT_FOR_THIS = 'not for this flight';

/** Whether the words of `only` leave the step out; a gate they may be; or words that nobody here can judge. */
function only(step: Step, frame: Frame): { out: boolean; gate: Margin | null; words: boolean } {
  if (step.only.trim() === '') return { out: false, gate: null, words: false };
  const named = detentsIn(step.only, frame.detents);
  if (named.length > 0 && /\bdetent\b/i.test(step.only)) {
    return { out: !named.includes(frame.conditions.detent), gate: null, words: false };
  }
  const parsed = parsedCue(step.only);
  if (parsed.gate !== null && parsed.problems.length === 0) {
    return { out: false, gate: marginOf(frame, parsed.gate), words: false };
  }
  return { out: false, gate: null, words: true };
}

/** `early`: heights do not come before lift-off, so that what stands before the first of them was done on the ground. */
function onTheGround(procedure: Procedure): number {
  const first = procedure.steps.findIndex((step) => {
    const { gate } = parsedCue(step.cue);
    if (gate === null) return false;
    const { measures, altitudes } = variablesOf(gate);
    const high = ['height', 'radio-height', 'altitude', 'flight-level', 'vertical-speed'] as const;
    return altitudes.length > 0 || measures.some((measure) => (high as readonly string[]).includes(measure));
  });
  return Math.max(0, first);
}

export function scriptFor(
  procedure: Procedure,
  modes: ModeSet,
  frame: Frame,
  airborne: boolean,
  settings: Pick<Settings, 'happens' | 'omit'>,
): Script {
  const lines = [procedure.steps, ...procedure.branches.map((branch) => branch.steps)];
  const all = lines.flat();
  const placeOf = new Map(all.map((step, place) => [step.id as string, place]));
  const grounded = airborne ? 0 : kept(grounds, procedure, () => onTheGround(procedure));
  const omitted = (step: Step): boolean => settings.omit.includes(step.id) || settings.omit.includes(step.label);
  const unread: { step: Step; says: string }[] = [];
  const taken: { step: Step; words: string }[] = [];
  const waiting: Waiting[] = [];
  let start = 0;
  for (const [b, steps] of lines.entries()) {
    const branch = b - 1;
    const ahead: number[] = [];
    let before = -1;
    for (const [i, step] of steps.entries()) {
      const place = start + i;
      const deed = deedOf(step, procedure, modes, frame);
      const lever = deed.flap >= 0 ? 'flap' : deed.gear !== null ? 'gear' : null;
      const parsed = parsedCue(step.cue);
      const blank = step.cue.trim() === '';
      const then = blank || (parsed.gate !== null && holdsThen(parsed.gate));
      const own = parsed.gate === null ? () => (blank ? 1 : -1) : marginOf(frame, parsed.gate);
      if (parsed.gate === null && !blank) unread.push({ step, says: `Its cue can't be read: ${step.cue}` });
      const { out, gate, words } = only(step, frame);
      if (words) taken.push({ step, words: step.only });
      const cue: Margin = gate === null ? own : (now) => Math.min(own(now), gate(now));
      const line = lineOf(frame, parsed.gate);
      const left = branch < 0 && i < grounded ? 'before the flight' : out || omitted(step) ? NOT_FOR_THIS : '';
      const behind = [...(then && before >= 0 ? [before] : []), ...(lever === null ? [] : ahead)];
      const ways = step.branch.map((way) => {
        const read = way.when.trim() === '' ? null : parsedCue(way.when).gate;
        const found = findStep(procedure, way.to);
        return { when: read === null ? null : marginOf(frame, read), to: found === null ? -1 : placeOf.get(found.id)! };
      });
      waiting.push({
        step,
        deed,
        lever,
        cue,
        could: parsed.gate === null ? cue : possible(frame, parsed.gate),
        behind,
        line,
        counts: countsOf(frame, parsed.gate),
        branch,
        ways,
        words: wordsOf(step),
        left,
        gate: null,
        act: null,
        done: null,
        times: 0,
      });
      if (left === '') {
        before = place;
        // What only looks and speaks holds no lever up, unless it marks a stage of the flight by its mode line.
        if (lever !== null || (step.only.trim() === '' && (line !== null || touches(deed)))) ahead.push(place);
      }
    }
    start += steps.length;
  }
  // A branch is left to when its own condition says so; what only a person can judge happens where the flight was told so.
  const sideways: Frame = { ...frame, happens: (text) => settings.happens.includes(text) };
  let first = procedure.steps.length;
  const branches = procedure.branches.map((branch): Side => {
    const read = parsedCue(branch.when);
    const steps = branch.steps.map((_, i) => first + i);
    first += branch.steps.length;
    return { when: read.gate === null ? () => -1 : marginOf(sideways, read.gate), steps, entered: false };
  });
  return { waiting, branches, unread, taken };
}

function holdsThen(gate: NonNullable<ReturnType<typeof parsedCue>['gate']>): boolean {
  if (gate.kind === 'then') return true;
  return (gate.kind === 'all' || gate.kind === 'any') && gate.of.some(holdsThen);
}

const countsOf = (frame: Frame, gate: Gate | null): Waiting['counts'] =>
  conjuncts(gate).flatMap((part) =>
    part.kind === 'after' && part.delay !== null ? [{ step: part.step, left: marginOf(frame, part) }] : [],
  );

const touches = (deed: Deed): boolean =>
  deed.rules.length > 0 || deed.speed !== null || deed.altitude !== null || deed.thrust !== null;

/** The conditions on modes and armed words that the cue has beside others. */
function lineOf(frame: Frame, gate: Gate | null): Margin | null {
  const parts = conjuncts(gate).filter((part) => ['mode', 'armed', 'not'].includes(part.kind));
  if (parts.length === 0) return null;
  return marginOf(frame, { kind: 'all', of: parts, span: { from: 0, to: 0 } });
}

/** Whether everything that the step waits behind is over: done, not in this flight, or waiting for another mode line. */
export const free = (script: Script, one: Waiting, now: Now): boolean =>
  one.behind.every((place) => {
    const other = script.waiting[place]!;
    if (other.done !== null || other.left !== '') return true;
    return one.lever !== null && other.gate === null && other.line !== null && other.line(now) < 0;
  });

/** Whether the step may still come. */
export const open = (script: Script, one: Waiting): boolean =>
  one.left === '' && one.gate === null && entered(script, one);

export const entered = (script: Script, one: Waiting): boolean =>
  one.branch < 0 || script.branches[one.branch]!.entered;

/** Whether the step waits for seconds or miles after another that is done. */
export const counting = (one: Waiting, now: Now): boolean =>
  one.counts.some(({ step, left }) => now.done.has(step) && left(now) < 0);

/** A step is done at most so often: whoever is sent back more often goes in a circle. */
const MOST_TIMES = 12;

/** Follows the ways of a step that is done: passes over what lies between, or goes back. A sentence when it goes in a circle. */
export function follow(script: Script, one: Waiting, now: Now): string | null {
  const place = script.waiting.indexOf(one);
  const way = one.ways.find((each) => each.when === null || each.when(now) >= 0);
  if (way === undefined || way.to < 0) return null;
  const target = script.waiting[way.to]!;
  if (target.branch >= 0 && target.branch !== one.branch) {
    script.branches[target.branch]!.entered = true;
    return null;
  }
  if (way.to > place) {
    for (const between of script.waiting.slice(place + 1, way.to)) {
      if (between.gate === null && between.left === '') between.left = NOT_FOR_THIS;
    }
    return null;
  }
  if (target.times >= MOST_TIMES) {
    return `${one.step.label || 'A step'} sends back to ${target.step.label || 'a step before it'} again and again; the flight goes on behind it.`;
  }
  for (const again of script.waiting.slice(way.to, place + 1)) {
    if (again.left !== '') continue;
    again.gate = null;
    again.act = null;
    again.done = null;
  }
  return null;
}
