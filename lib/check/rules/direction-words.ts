import { figuresIn } from '../figures.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const DOWN = /\b(reduce|decrease|slow|lower|descend|retard)\b/i;
const UP = /\b(increase|accelerate|raise|climb|advance)\b/i;
const FIELDS = ['object', 'value', 'orderWords', 'note'] as const;

/** `to` and `from` figures of one text, whichever comes first. */
function change(text: string): { from: number; to: number; at: number; end: number } | null {
  const figures = figuresIn(text);
  const to = figures.find((figure) => /\bto\s*$/i.test(text.slice(0, figure.from)));
  const from = figures.find((figure) => /\bfrom\s*$/i.test(text.slice(0, figure.from)));
  if (to === undefined || from === undefined) return null;
  return { from: from.value, to: to.value, at: Math.min(from.from, to.from), end: Math.max(from.to, to.to) };
}

export const directionWords = defineRule({
  id: 'direction-words',
  number: 35,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Direction against the figures',
  says: '"Reduce", "increase", "up", "down" agree with the figures beside them and with the target flown before.',
  why: 'The hand follows the word, the eye the figure: one of them is wrong.',
  source: { text: 'slips of direction', seen: false },
  needs: [],
  reads: ['object', 'value', 'orderWords', 'note'],
  messages: {
    figures: 'The words say {way}, the figures go from {from} to {to}.',
    target: 'The words say {way}, but the target before this step is {from}, and the new one {to}.',
  },
  examples: {
    bad: '[{cue: then, who: PF, verb: set, object: speed selector, value: reduce to 210 kt from 190 kt}]',
    good: '[{cue: then, who: PF, verb: set, object: speed selector, value: reduce from 210 kt to 190 kt}]',
  },
  run({ states }, report) {
    for (const { step, before } of states) {
      for (const field of FIELDS) {
        const text = step[field];
        const down = DOWN.exec(text);
        const up = UP.exec(text);
        if ((down === null) === (up === null)) continue;
        const way = (down ?? up)![0].toLowerCase();
        const at = { step: step.id as string, field };
        const wrong = (from: number, to: number): boolean => (down === null ? to < from : to > from);
        const said = change(text);
        if (said !== null) {
          if (!wrong(said.from, said.to)) continue;
          const data = { way, from: said.from, to: said.to };
          report({ at, message: 'figures', data, witness: wordsOf(field, text, said.at, said.end) });
          continue;
        }
        const knots = figuresIn(text).find(
          (figure) => figure.unit === 'kt' && /\bto\s*$/i.test(text.slice(0, figure.from)),
        );
        const { target } = before;
        if (knots === undefined || target.kind !== 'expression' || target.term.kind !== 'amount') continue;
        if (!/\bspeed\b/i.test(step.object) || !wrong(target.term.value, knots.value)) continue;
        const data = { way, from: `${target.term.value} kt`, to: `${knots.value} kt` };
        report({
          at,
          message: 'target',
          data,
          witness: wordsOf(field, text, knots.from, knots.to),
          read: [target.text],
        });
      }
    }
  },
});
