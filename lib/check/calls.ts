// The calls of a text that somebody acts on: orders, and words that another step waits for.
import { visitGate } from '../gate/visit.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import type { Step } from '../procedure/procedure.ts';
import { plain } from './names.ts';

export type Call = {
  readonly words: string;
  /** The act that it asks for, such as `select flap lever f6`. */
  readonly does: string;
  readonly step: string;
};

/** Each pair of words and act once. A step that is ordered and waits for the same words is one call. */
export function callsOf(steps: readonly Step[]): readonly Call[] {
  const found = new Map<string, Call>();
  for (const step of steps) {
    const does = plain(`${step.verb} ${step.object} ${step.value}`);
    const said = [step.orderWords, ...heardIn(step.cue)].filter((words) => words.trim() !== '');
    for (const words of said) {
      const call = { words: plain(words), does, step: step.id };
      const key = `${call.words}|${does}`;
      if (!found.has(key)) found.set(key, call);
    }
  }
  return [...found.values()];
}

function heardIn(cue: string): readonly string[] {
  if (!cue.includes('heard')) return [];
  const { gate } = parsedCue(cue);
  const words: string[] = [];
  if (gate !== null)
    visitGate(gate, { gate: (each) => each.kind === 'heard' && words.push(each.words), term: () => {} });
  return words;
}
