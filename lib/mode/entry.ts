// The states of the machine in which a procedure may begin, by its entry line.
import type { Procedure, StateLine } from '../procedure/procedure.ts';
import type { Graph } from './graph.ts';
import type { Line } from './layout.ts';
import { ALTITUDE } from './rule-code.ts';

const among = (asked: readonly string[], word: string): boolean => asked.length === 0 || asked.includes(word);

/**
 * Armed as the line says. The selected altitude is one word of a list that covers several modes: it must be armed in the modes
 * that lead somewhere, and can't be in the others ("in LEVEL nothing is armed").
 */
function armedFits(asked: readonly string[] | null, line: Line, graph: Graph): boolean {
  if (asked === null) return true;
  const { climbing, descending, armsAlways } = graph.machine.modes;
  const leads = [...climbing, ...descending, ...armsAlways].includes(line.vertical);
  const wanted = asked.filter((word) => word !== ALTITUDE || leads);
  return wanted.every((word) => line.armed.includes(word)) && line.armed.every((word) => wanted.includes(word));
}

const fits = (entry: StateLine, line: Line, graph: Graph): boolean =>
  among(entry.thrust, line.thrust) &&
  among(entry.lateral, line.lateral) &&
  among(entry.vertical, line.vertical) &&
  armedFits(entry.armed, line, graph);

/**
 * Indices of the reachable states that the entry line allows. A take-off begins in the phase in which the table begins where
 * its line allows that, everything else where it doesn't: the same three words may stand there before V1 and in flight.
 */
export function entryStates(graph: Graph, procedure: Procedure): readonly number[] {
  const first = graph.machine.modes.initial.map((line) => line.phase);
  const takeOff = procedure.phases[0] === 'take-off';
  const all = graph.lines.flatMap((line, index) => (fits(procedure.entry, line, graph) ? [index] : []));
  const meant = all.filter((index) => first.includes(graph.lines[index]!.phase) === takeOff);
  return meant.length > 0 ? meant : all;
}

/** Whether a state is one that the procedure promises at its end. */
export function exitFits(graph: Graph, procedure: Procedure, index: number): boolean {
  return fits(procedure.exit, graph.lines[index]!, graph);
}

/** The modes of a state line as one text, the same however the line was written. */
export function modesText({ thrust, lateral, vertical, armed }: StateLine): string {
  return [thrust, lateral, vertical, armed ?? ['not stated']].map((words) => words.join(' / ')).join(', ');
}
