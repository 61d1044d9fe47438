import { conjuncts } from '../../procedure/cue.ts';
import { findStep } from '../../procedure/locate.ts';
import type { StepState } from '../../procedure/walk.ts';
import { type PathGate, passedBefore, pathGate, previousDetents, spokenAt } from '../path-gate.ts';
import { defineRule } from '../rule.ts';
import { inOrder, wordsOf } from '../witness.ts';

export const gatesOutOfOrder = defineRule({
  id: 'gates-out-of-order',
  number: 61,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Gates out of order',
  says: 'Height, altitude and distance gates follow one another as the path passes them, and no step waits for something that only a later step brings: a step, a word, a flap that nothing before selects.',
  why: 'A gate that stands after a later one is passed before anybody looks for it.',
  source: { text: 'house rule of the demo operator', seen: true },
  needs: ['policy'],
  reads: ['cue', 'only'],
  messages: {
    order: '{words} stands after {previous} in {step}: it is passed before anybody looks for it.',
    'later-step': 'The step waits for {name}, which comes later: it would never begin in this order.',
    'later-word': 'The step waits for "{words}", which is only said later, in {name}.',
    'never-there': 'The step waits for {detent}, but nothing before it puts the flap there: {possible}.',
  },
  examples: {
    bad: '[{cue: height <= 500 ft AAL, who: PM, verb: call, object: height}, {cue: height <= 1 000 ft AAL, who: PM, verb: call, object: height}]',
    good: '[{cue: height <= 1 000 ft AAL, who: PM, verb: call, object: height}, {cue: height <= 500 ft AAL, who: PM, verb: call, object: height}]',
  },
  run({ states, procedure, policy }, report) {
    const passed = new Map<string, { gate: PathGate; at: StepState }>();
    const lineOf = (at: StepState): string => at.branch?.id ?? '';
    for (const here of states) {
      const at = { step: here.step.id as string, field: 'cue' };
      const name = (there: StepState): string => there.step.label || `step ${there.index + 1}`;
      for (const part of conjuncts(here.gate.gate)) {
        const gate = pathGate(part, policy.gates.noise);
        if (gate !== null) {
          const key = `${lineOf(here)} ${gate.scale} ${gate.way}`;
          const previous = passed.get(key);
          if (previous !== undefined && passedBefore(gate, previous.gate)) {
            const data = { words: gate.words, previous: previous.gate.words, step: name(previous.at) };
            const says = `${previous.gate.words} comes first on the page, ${gate.words} first on the path`;
            const witness = inOrder(previous.at.step.id, here.step.id, says);
            report({ at, message: 'order', data, witness, read: [previous.gate.words] });
          } else passed.set(key, { gate, at: here });
        }
        const words = wordsOf('cue', here.step.cue, part.span.from, part.span.to);
        if (part.kind === 'after') {
          const other = findStep(procedure, part.step);
          const later = states.find((each) => each.step.id === other?.id);
          if (later !== undefined && lineOf(later) === lineOf(here) && later.index >= here.index) {
            report({ at, message: 'later-step', data: { name: part.step }, witness: words });
          }
        }
        if (part.kind === 'heard') {
          const wanted = part.words.trim().toLowerCase();
          const says = states.filter((each) => each !== here && spokenAt(each).includes(wanted));
          const line = says.filter((each) => lineOf(each) === lineOf(here));
          const before = says.some((each) => lineOf(each) !== lineOf(here) || each.index < here.index);
          if (line.length > 0 && !before) {
            report({ at, message: 'later-word', data: { words: part.words, name: name(line[0]!) }, witness: words });
          }
        }
      }
      if (here.neverThere !== null && here.before.flapsKnown) {
        const possible = previousDetents(states, here);
        const data = { detent: here.neverThere, possible };
        report({ at, message: 'never-there', data, witness: wordsOf('cue', here.step.cue), read: [possible] });
      }
    }
  },
});
