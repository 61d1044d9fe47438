import type { Gate, GateProblem } from '../../gate/syntax.ts';
import { conjuncts } from '../../procedure/cue.ts';
import { FIGURE_FIELDS, figureFields } from '../fields.ts';
import { type Figure, figuresIn } from '../figures.ts';
import { applied } from '../gate-fix.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const STATED = /^(AAL|MSL|AGL|RA|radio|above (the )?(aerodrome|ground|sea))\b/i;
const STATED_BEFORE = /\b(radio height|radio altimeter|radio)\b[^\d]*$/i;
const DIFFERENCE_BEFORE = new Set([
  'within',
  'each',
  'every',
  'per',
  'than',
  'last',
  'next',
  'by',
  'plus',
  'minus',
  'steps',
  'loses',
  'gains',
  'additional',
  'error',
]);
const DIFFERENCE_BEHIND =
  /^(before|below|of|after|up|down|to go|to lose|higher|lower|per|apart|from|long|wide|range|or more (above|below)|above (the )?(selected|cleared|minima|obstacle|terrain))\b/i;
const ALTITUDE_OBJECT = /\b(altitude|height|level|minima|bug|gate|DA|MDA)\b/i;
const ALTITUDES = new Set(['height', 'altitude', 'radio-height']);

/** A bare figure that the cue compares with a height or an altitude. */
function bareAltitude(gate: Gate | null, problem: GateProblem): boolean {
  if (problem.code !== 'unit-missing') return false;
  return conjuncts(gate).some((part) => {
    if (part.kind !== 'compare' || part.left.kind !== 'measure' || !ALTITUDES.has(part.left.measure)) return false;
    const { span } = part.right;
    return span.from < problem.span.to && problem.span.from < span.to && part.right.kind === 'amount';
  });
}

const isDifference = (text: string, figure: Figure): boolean =>
  /^[+±-]/.test(text.slice(figure.from)) ||
  /[+-]\s*$/.test(text.slice(0, figure.from)) ||
  DIFFERENCE_BEFORE.has(figure.before) ||
  DIFFERENCE_BEHIND.test(figure.behind) ||
  /\b(up|down)\b/i.test(text);

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
    for (const { at, text, about, notation } of figureFields(procedure, steps)) {
      if (notation) {
        const parsed = gate(text);
        for (const problem of parsed.problems) {
          const said = problem.code === 'reference-missing' || problem.code === 'reference-wrong';
          if (!said && !bareAltitude(parsed.gate, problem)) continue;
          const figure = text.slice(problem.span.from, problem.span.to);
          const cause = said ? undefined : `bare figure ${at.step} ${at.field} ${problem.span.from}`;
          const witness = wordsOf(at.field, text, problem.span.from, problem.span.to);
          const fix = applied(text, problem, at);
          if (said)
            report({ at, message: 'in-cue', data: { problem: problem.message.replace(/\.$/, '') }, witness, ...fix });
          else report({ at, message: 'missing', data: { figure }, witness, cause, ...fix });
        }
        continue;
      }
      for (const figure of figuresIn(text)) {
        const feet = figure.unit === 'ft' || figure.unit === 'feet' || figure.unit === 'm' || figure.unit === 'metres';
        const bare = figure.unit === null && figure.needsUnit && ALTITUDE_OBJECT.test(about);
        if (!feet && !bare) continue;
        if ((figure.unit ?? '').startsWith('m') && !ALTITUDE_OBJECT.test(about)) continue;
        if (STATED.test(figure.behind) || STATED_BEFORE.test(text.slice(0, figure.from)) || isDifference(text, figure))
          continue;
        const selector = /\baltitude selector\b/i.test(about) && at.field === 'value';
        const value = `${text.slice(0, figure.to)}${bare ? ' ft' : ''} MSL${text.slice(figure.to)}`;
        report({
          at,
          message: 'missing',
          data: { figure: text.slice(figure.from, figure.to) },
          witness: wordsOf(at.field, text, figure.from, figure.to),
          cause: bare ? `bare figure ${at.step} ${at.field} ${figure.from}` : undefined,
          // The altitude selector counts from the sea and nowhere else.
          ...(selector ? { fix: { says: 'write MSL: the altitude selector knows no other', at, value } } : {}),
        });
      }
    }
  },
});
