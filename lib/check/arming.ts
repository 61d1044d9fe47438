// Whether something stops a climb or descent at the selected altitude, and who would notice that nothing does.

import type { ModeSet } from '../aircraft/mode-set.ts';
import type { Line } from '../mode/layout.ts';
import { ALTITUDE } from '../mode/rule-code.ts';
import type { Step } from '../procedure/procedure.ts';
import type { Doing } from './mode-paths.ts';

/** Climbing or descending with the selected altitude not armed. */
export function unstopped(line: Line, modes: ModeSet): boolean {
  const leads = modes.climbing.includes(line.vertical) || modes.descending.includes(line.vertical);
  return leads && !line.armed.includes(ALTITUDE);
}

const readsArmed = ({ expect }: Step): boolean =>
  Array.isArray(expect.armed) && (expect.armed as readonly string[]).includes(ALTITUDE);
const namesIt = (text: string): boolean => new RegExp(`\\b(not armed|${ALTITUDE})\\b`).test(text);

/** A step of the procedure waits for just this: nothing armed. Its cue holds in this state. */
function caught({ flight, place }: Doing, end: number): boolean {
  const { script, graph } = flight.composed;
  const line = graph.lines[end]!;
  const main = place <= script.main.end;
  const branch = script.places[place]!.branch;
  return script.places.some((other, index) => {
    if (other.step === null || !namesIt(other.step.cue) || !/\bnot armed\b/.test(other.step.cue)) return false;
    const standing = main && script.standing.some((one) => one.place === index && one.from <= place + 1);
    const later = index > place && other.branch === branch;
    return (
      (standing || later || (!main && index <= script.main.end)) && other.cue?.[end] === 'true' && line !== undefined
    );
  });
}

/** The step right behind, done at once, arms again on whatever the step led to. */
function mended({ flight, place }: Doing, end: number): boolean {
  const { script, outcomes, graph } = flight.composed;
  const next = script.places[place + 1];
  if (next === undefined || next.step === null || next.rules === null || !next.prompt) return false;
  const lines = Array.from(outcomes.after(place + 1, end), (state) => graph.lines[state]!);
  return lines.every((line) => !unstopped(line, graph.machine.modes));
}

/** An outcome of the step that climbs or descends with nothing to stop it, and that nobody is told to notice; null: none. */
export function unnoticed(doing: Doing): number | null {
  const { flight, ends, step } = doing;
  const { graph } = flight.composed;
  if (readsArmed(step) || namesIt(step.checkIfNot)) return null;
  const bad = ends.find(
    (end) => unstopped(graph.lines[end]!, graph.machine.modes) && !mended(doing, end) && !caught(doing, end),
  );
  return bad ?? null;
}
