import { FIGURE_FIELDS, figureFields, wordedCue } from '../fields.ts';
import { figuresIn } from '../figures.ts';
import { applied } from '../gate-fix.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

/** Units of other fleets: the house counts in kt, ft, NM, kg and hPa. */
const FOREIGN = new Map([
  ['lb', 'kg'],
  ['lbs', 'kg'],
  ['inHg', 'hPa'],
  ['mph', 'kt'],
  ['km/h', 'kt'],
  ['km', 'NM'],
]);
/** A bare figure in this range beside a speed is knots and nothing else, kt. */
const SURELY_KNOTS = { from: 60, to: 400 };

export const unitMissing = defineRule({
  id: 'unit-missing',
  number: 32,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Unit missing',
  says: "Every figure in a field has a unit, and it is the fleet's. Spoken words, detents, runway designators, headings, flight levels and counts are exempt.",
  why: 'Fuel in pounds taken for kilograms, metres for feet, hPa for inHg: a figure alone is read in the unit one is used to.',
  source: { text: 'unit mix-ups in fuel, altitude and pressure', seen: false },
  needs: [],
  reads: FIGURE_FIELDS,
  messages: {
    bare: '{figure} has no unit: it is read in whatever unit the reader is used to.',
    foreign: "{unit} is not the fleet's unit: write {instead}.",
    'in-cue': '{problem}.',
  },
  examples: {
    bad: '[{cue: height >= 3 000 ft AAL, who: PM, verb: set, object: speed selector, value: "180"}]',
    good: '[{cue: height >= 3 000 ft AAL, who: PM, verb: set, object: speed selector, value: 180 kt}]',
  },
  run({ procedure, steps, gate }, report) {
    for (const { at, text, about, notation } of figureFields(procedure, steps)) {
      if (notation) {
        for (const problem of gate(text).problems) {
          if (problem.code !== 'unit-missing' && problem.code !== 'unit-wrong') continue;
          report({
            at,
            message: 'in-cue',
            data: { problem: problem.message.replace(/\.$/, '') },
            witness: wordsOf(at.field, text, problem.span.from, problem.span.to),
            cause: `bare figure ${at.step} ${at.field} ${problem.span.from}`,
            ...applied(text, problem, at),
          });
        }
      }
      for (const figure of figuresIn(notation ? wordedCue(text) : text)) {
        const instead = FOREIGN.get(figure.unit ?? '');
        if (instead !== undefined) {
          const witness = wordsOf(at.field, text, figure.from, figure.to);
          report({ at, message: 'foreign', data: { unit: figure.unit ?? '', instead }, witness });
        }
        if (figure.unit !== null || !figure.needsUnit) continue;
        const knots =
          !notation && /\bspeed\b/i.test(about) && figure.value >= SURELY_KNOTS.from && figure.value <= SURELY_KNOTS.to;
        const figureText = text.slice(figure.from, figure.digitsTo);
        const value = `${text.slice(0, figure.digitsTo)} kt${text.slice(figure.digitsTo)}`;
        report({
          at,
          message: 'bare',
          data: { figure: figureText },
          witness: wordsOf(at.field, text, figure.from, figure.digitsTo),
          cause: `bare figure ${at.step} ${at.field} ${figure.from}`,
          ...(knots ? { fix: { says: `write ${figureText} kt`, at, value } } : {}),
        });
      }
    }
  },
});
