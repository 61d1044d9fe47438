// Modes to which the guidance may go back by itself, as a consequence of what a step did.
import type { ModeSet } from '../aircraft/mode-set.ts';
import type { Step } from '../procedure/procedure.ts';
import type { Doing } from './mode-paths.ts';

/** Reversions that can come after the step and could not before it. The end is the state after the step. */
export function openedBy(
  { flight, place, state, ends }: Doing,
  modes: ModeSet,
): { readonly rule: string; readonly to: string; readonly end: number } | null {
  const { graph, script } = flight.composed;
  if (script.places[place]!.rules === null) return null;
  const leaving = (from: number): readonly { readonly rule: string; readonly to: string }[] => {
    const found: { rule: string; to: string }[] = [];
    for (let e = graph.first[from]!; e < graph.first[from + 1]!; e += 1) {
      const { id, event } = modes.rules[graph.rule[e]!]!;
      if (modes.reversions?.includes(id)) found.push({ rule: event, to: graph.lines[graph.to[e]!]!.vertical });
    }
    return found;
  };
  const before = new Set(leaving(state).map(({ to }) => to));
  for (const end of ends) {
    const reversion = leaving(end).find(({ to }) => !before.has(to));
    if (reversion !== undefined) return { ...reversion, end };
  }
  return null;
}

/** Where a procedure names what may come by itself. */
export const reversionTexts = (step: Step): string =>
  [
    step.cue,
    step.note,
    step.expectNote,
    step.checkSees,
    step.checkIfNot,
    ...step.before.map(({ text }) => text),
    String(step.expect.vertical),
  ].join(' ');
