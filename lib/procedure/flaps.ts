// The flap lever in a procedure: which detents there are, what a step moves, and which movement is one step of the lever.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Procedure, Step } from './procedure.ts';
import type { FlapWorld } from './state.ts';

export type FlapMove = {
  readonly from: string;
  readonly to: string;
  readonly way: 'extend' | 'retract';
  /** Detents of the movement in order, both ends included. */
  readonly through: readonly string[];
};

const DETENT = /\bF\d{1,2}\b/g;
const degree = (name: string): number => Number(name.slice(1));

/** Detents by rising flap, from the sheet; without a sheet, those that the procedure names. */
export function detentNames(procedure: Procedure, sheet: Sheet | null): readonly string[] {
  if (sheet !== null) return sheet.detents.map((detent) => detent.name);
  const texts = [...procedure.entry.flaps, ...procedure.exit.flaps, ...procedure.envelope.detents];
  const steps = [...procedure.steps, ...procedure.branches.flatMap((branch) => branch.steps)];
  const all = [...texts, ...steps.flatMap((step) => [step.cue, step.value, step.only])].join(' ').match(DETENT) ?? [];
  return [...new Set(all)].sort((a, b) => degree(a) - degree(b));
}

/** Detent names standing as words in a text. */
export function detentsIn(text: string, names: readonly string[]): readonly string[] {
  const words = new Set(text.split(/[^\w]+/));
  return names.filter((name) => words.has(name));
}

const isFlapLever = (object: string): boolean => /\bflaps?\b/i.test(object);

const FLIGHT_OWN = /\b(planned|briefed|landing|take-off)\b/i;

/** The detents that this step may put the lever to; null when it moves no flap lever, none when it doesn't say where to. */
export function flapSelections(step: Step, procedure: Procedure, names: readonly string[]): readonly string[] | null {
  const moves = step.verb === 'select' || step.verb === 'set' || step.verb === 'move';
  if (!moves || !isFlapLever(step.object)) return null;
  const named = detentsIn(`${step.value} ${step.object}`, names);
  if (named.length > 0) return named;
  if (FLIGHT_OWN.test(step.value)) return procedure.envelope.detents.filter((name) => names.includes(name));
  // A detent that the sheet doesn't know is still a selection: the check of detents must see it.
  const unknown = /^[A-Z][A-Z0-9]*$/.exec(step.value.trim()) ?? /\bF\d{1,2}\b/.exec(step.value);
  return unknown === null ? [] : [unknown[0]];
}

/** Null when the lever is there already, or a name is not one of the detents. */
export function flapMove(from: string, to: string, names: readonly string[]): FlapMove | null {
  const start = names.indexOf(from);
  const end = names.indexOf(to);
  if (start < 0 || end < 0 || start === end) return null;
  const through = start < end ? names.slice(start, end + 1) : names.slice(end, start + 1).reverse();
  return { from, to, way: end > start ? 'extend' : 'retract', through };
}

/** The world after the lever was moved: until somebody sees it arrive, the flap may be anywhere on the way. */
export function moved(world: FlapWorld, to: string, names: readonly string[]): FlapWorld {
  const move = flapMove(world.selected, to, names);
  return { origin: world.origin, selected: to, indicated: move === null ? [to] : move.through };
}
