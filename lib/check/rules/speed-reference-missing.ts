import type { Gate, Span, Term } from '../../gate/syntax.ts';
import { FIGURE_FIELDS, figureFields } from '../fields.ts';
import { withoutSpoken } from '../figures.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

/** VREF, VMM, VFE and VSR are speeds of a detent; V1, VR, V2 and VAPP are entered figures and stand for one flight. */
const OF_DETENT = /\bV(REF|MM|FE|SR)\b/g;
const SAYS_DETENT =
  /^(\s+[A-Z][A-Z0-9]+\b|\s+(of|for) (the |each |every |next |planned |present )*(detent|flap)|\s+(of|for) [A-Z][A-Z0-9]+\b)/;

function terms(gate: Gate | null): readonly Term[] {
  if (gate === null) return [];
  if (gate.kind === 'all' || gate.kind === 'any') return gate.of.flatMap(terms);
  if (gate.kind === 'not' || gate.kind === 'within') return terms(gate.of);
  if (gate.kind === 'compare') return [gate.left, gate.right];
  return gate.kind === 'window' ? [gate.low, gate.high] : [];
}
function withoutDetent(term: Term): readonly Span[] {
  if (term.kind === 'sum') return [...withoutDetent(term.left), ...withoutDetent(term.right)];
  if (term.kind === 'extreme') return term.of.flatMap(withoutDetent);
  return term.kind === 'speed' && term.name === 'VREF' && term.detent === null ? [term.span] : [];
}

export const speedReferenceMissing = defineRule({
  id: 'speed-reference-missing',
  number: 34,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Speed reference missing',
  says: 'A reference speed says for which detent; "icing" behind it says that the icing increment is in it, its absence that it is not. The entered speeds V1, VR, V2 and VAPP, and "of the detent held", name their own.',
  why: 'Reference speeds for clear air were flown with the icing switch set: 13 kt below the speed of the stick shaker.',
  source: { text: 'NTSB AAR-10/01', seen: true },
  needs: [],
  reads: FIGURE_FIELDS,
  messages: {
    detent: '{words} does not say for which detent: between two landing detents it is a different speed.',
  },
  examples: {
    bad: '[{cue: then, who: PF, verb: set, object: speed selector, value: VREF + 5 kt}]',
    good: '[{cue: then, who: PF, verb: set, object: speed selector, value: VREF F35 + 5 kt}]',
  },
  run({ procedure, steps, gate }, report) {
    for (const { at, text, notation } of figureFields(procedure, steps)) {
      if (notation) {
        const parsed = gate(text);
        const missing = parsed.problems
          .filter((problem) => problem.code === 'detent-missing')
          .map((problem) => problem.span);
        const bare = terms(parsed.gate).flatMap(withoutDetent);
        for (const span of [...missing, ...bare]) {
          const witness = wordsOf(at.field, text, span.from, span.to);
          report({ at, message: 'detent', data: { words: text.slice(span.from, span.to) }, witness });
        }
        continue;
      }
      const plain = withoutSpoken(text);
      for (const match of plain.matchAll(OF_DETENT)) {
        const behind = plain.slice(match.index + match[0].length);
        const to = match.index + match[0].length;
        const witness = wordsOf(at.field, text, match.index, to);
        if (!SAYS_DETENT.test(behind)) report({ at, message: 'detent', data: { words: match[0] }, witness });
      }
    }
  },
});
