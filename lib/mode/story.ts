// A path through a composed exploration as pilots can follow it: what hands do, what happens by itself, what is left out.
import { positionWords } from '../procedure/locate.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import type { Composed } from './compose.ts';
import { type Exploration, labelInto, trail } from './explore.ts';
import { moveOf, SURPRISE } from './moves.ts';
import type { PathStep } from './path.ts';

export type StoryStep = PathStep & {
  /** The step that it belongs to; null: it happened beside the text. */
  readonly step: Step | null;
};

/** What a step does in a few words: `CL-04 press ASCENT`. */
export function deedWords(procedure: Procedure, step: Step): string {
  const words = [positionWords(procedure, step.id), step.verb, step.object].filter(Boolean);
  return words.join(' ');
}

/** The path to a composed state. Steps that touch nothing are in it; steps passed over are not. */
export function storyOf(
  procedure: Procedure,
  composed: Composed,
  found: Exploration,
  index: number,
): readonly StoryStep[] {
  const { graph, script } = composed;
  const rules = graph.machine.rules;
  const surprises = (graph.machine.modes.environment ?? []).filter((one) =>
    composed.setting.environment.includes(one.name),
  );
  const indices = trail(found, index);
  return indices.flatMap((at, k): StoryStep[] => {
    const { state } = composed.parts(found.states[at]!);
    const line = graph.lines[state]!;
    if (k === 0) return [{ who: 'start', rule: '', does: 'at the start', line, step: null }];
    const { move, what } = moveOf(labelInto(composed.system, found, at));
    if (move === 'pass') return [];
    if (move === 'rule') {
      const { who, id, event } = rules[what]!;
      return [{ who, rule: id, does: event, line, step: null }];
    }
    if (move === 'surprise') {
      const surprise = surprises[Math.floor(what / SURPRISE)]!;
      const rule = rules[what % SURPRISE];
      return [{ who: 'environment', rule: rule?.id ?? '', does: surprise.says, line, step: null }];
    }
    if (move === 'branch') {
      const { branch } = script.leaves[what]!;
      return [{ who: 'crew', rule: '', does: `goes by ${branch.label || branch.title}`, line, step: null }];
    }
    const { step } = script.places[what]!;
    const before = composed.parts(found.states[indices[k - 1]!]!).state;
    const deed = deedWords(procedure, step!);
    const how = { forget: ' is forgotten', 'put off': ' is put off', 'do late': ', late' }[move as string] ?? '';
    const does = move === 'do first of two' ? `${deed}, and will be done again` : `${deed}${how}`;
    return [{ who: 'crew', rule: ruleBetween(composed, what, before, state), does, line, step }];
  });
}

/** Which rule of the hand at this place led from one machine state to the other; '' where none did. */
export function ruleBetween(composed: Composed, place: number, from: number, to: number): string {
  const { first, rule, to: ends, machine } = composed.graph;
  const rules = composed.script.places[place]!.rules ?? [];
  for (let e = first[from]!; e < first[from + 1]!; e += 1) {
    if (ends[e] === to && rules.includes(rule[e]!)) return machine.rules[rule[e]!]!.id;
  }
  return '';
}
