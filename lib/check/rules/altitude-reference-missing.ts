import { isBareAltitude, unreferenced } from '../altitude-text.ts';
import { FIGURE_FIELDS, type FieldText, figureFields } from '../fields.ts';
import { type Figure, figuresIn } from '../figures.ts';
import { applied } from '../gate-fix.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

/** Same cause as the missing unit: one figure, one thing to mend. */
const bareFigure = ({ at }: FieldText, from: number): string => `bare figure ${at.step} ${at.field} ${from}`;

/** The altitude selector counts from the sea and nowhere else. */
function selectorFix({ at, text, about }: FieldText, figure: Figure) {
  if (!/\baltitude selector\b/i.test(about) || at.field !== 'value') return {};
  const unit = figure.unit === null ? ' ft' : '';
  const value = `${text.slice(0, figure.to)}${unit} MSL${text.slice(figure.to)}`;
  return { fix: { says: 'write MSL: the altitude selector knows no other', at, value } };
}

export const altitudeReferenceMissing = defineRule({
  id: 'altitude-reference-missing',
  number: 33,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Altitude reference missing',
  says: 'A height or altitude says from where it is measured: AAL, MSL or radio height. A flight level is its own reference; spoken words, differences ("within 80 ft") and names are exempt.',
  why: 'A gate meant above the aerodrome and flown above the sea is underground at an aerodrome of 5 430 ft.',
  source: { text: 'demo operator, aerodrome card of QSTR', seen: true },
  needs: [],
  reads: FIGURE_FIELDS,
  messages: {
    missing:
      '{figure} is not said to be AAL, MSL or radio height: above the sea it would be underground at a high aerodrome.',
    'in-cue': '{problem}.',
  },
  examples: {
    bad: '[{cue: "height >= 1 000", who: PM, verb: call, object: height, say: one thousand, replyBy: PF, reply: checked}]',
    good: '[{cue: "height >= 1 000 ft AAL", who: PM, verb: call, object: height, say: one thousand, replyBy: PF, reply: checked}]',
  },
  run({ procedure, steps, gate }, report) {
    for (const field of figureFields(procedure, steps)) {
      const { at, text, about, notation } = field;
      if (!notation) {
        for (const figure of figuresIn(text)) {
          const kind = unreferenced(text, figure, about);
          if (kind === null) continue;
          report({
            at,
            message: 'missing',
            data: { figure: text.slice(figure.from, figure.to) },
            witness: wordsOf(at.field, text, figure.from, figure.to),
            ...(kind === 'bare' ? { cause: bareFigure(field, figure.from) } : {}),
            ...selectorFix(field, figure),
          });
        }
        continue;
      }
      const parsed = gate(text);
      for (const problem of parsed.problems) {
        const { from, to } = problem.span;
        const witness = wordsOf(at.field, text, from, to);
        const fix = applied(text, problem, at);
        const bare = isBareAltitude(parsed.gate, problem);
        const said = parsed.problems.some((other) => isBareAltitude(parsed.gate, other) && other.span.from === from);
        if (!bare && !said && (problem.code === 'reference-missing' || problem.code === 'reference-wrong')) {
          report({ at, message: 'in-cue', data: { problem: problem.message.replace(/\.$/, '') }, witness, ...fix });
        } else if (bare) {
          const data = { figure: text.slice(from, to) };
          report({ at, message: 'missing', data, witness, cause: bareFigure(field, from), ...fix });
        }
      }
    }
  },
});
