import { formatHeight, formatNumber } from '../../units/format.ts';
import type { Feet } from '../../units/quantity.ts';
import { cardsAt, cardsOf } from '../cards.ts';
import { figuresIn } from '../figures.ts';
import { defineRule } from '../rule.ts';
import { TEXT_FIELDS, textsOf } from '../texts.ts';
import { absent, wordsOf } from '../witness.ts';

const SETS = new Set(['set', 'select', 'read']);
const ALTITUDE = /\b(altitude selector|selected altitude|bug|minima|altitude)\b/i;

/** What thin air changes, by the words with which a procedure says that it was looked at. */
const LOOKED_AT = [
  ['pressurisation', /\b(pressuri[sz]|cabin altitude|cabin pressure|landing elevation)/i],
  ['true speed and turn radius', /\b(true (air)?speed|TAS|turn radius|radius of the turn|ground speed)\b/i],
  ['climb gradient', /\bgradient|\bclimb limit|\b(take-off|landing) calculation\b/i],
] as const;

export const highAerodrome = defineRule({
  id: 'high-aerodrome',
  number: 60,
  severity: 'ANSWER',
  kind: 'N',
  stage: 'writing',
  phases: ['take-off', 'initial climb', 'approach', 'landing', 'go-around'],
  title: 'High aerodrome',
  says: "At an aerodrome above the policy's elevation what is set is an altitude above sea level and above the ground, and pressurisation, true speed with turn radius, and gradient are looked at again.",
  why: 'A gate of 1 000 ft set as an altitude at 5 430 ft is underground.',
  source: { text: 'operator policy: aerodromes above 3 000 ft', seen: true },
  needs: ['policy', 'library'],
  reads: TEXT_FIELDS,
  messages: {
    reference: '{value} is set at {code}: on the altimeter that is {altitude} ft MSL.',
    under: '{value} lies below {code}, which is {elevation} ft MSL: it is underground.',
    silent: 'Nothing is said of {what} at {code}, {elevation} ft MSL: the figures of a low aerodrome do not hold.',
  },
  examples: {
    bad: '{phases: [approach], title: Approach at QSTR, steps: [{cue: then, who: PM, verb: set, object: altitude bug, value: 1 000 ft AAL}]}',
    good: '{phases: [approach], title: Approach at QSTR, weightLimit: gradient from the landing calculation, entry: {also: cabin altitude set; true speed and turn radius briefed}, steps: [{cue: then, who: PM, verb: set, object: altitude bug, value: 6 430 ft MSL}]}',
  },
  run({ procedure, steps, library, policy }, report) {
    const high = (elevation: number): boolean => elevation > policy.gates.highAerodrome;
    for (const step of steps) {
      if (!SETS.has(step.verb) || !ALTITUDE.test(step.object)) continue;
      const card = cardsAt(library, procedure, step).find(({ elevation }) => high(elevation));
      if (card === undefined) continue;
      for (const figure of figuresIn(step.value)) {
        const bare = figure.unit === null && figure.needsUnit;
        if (figure.unit !== 'ft' && !bare) continue;
        const aal = /^AAL\b/i.test(figure.behind);
        const value = step.value.slice(figure.from, figure.to) + (aal ? ' AAL' : '');
        const under = /^MSL\b/i.test(figure.behind) && figure.value < card.elevation;
        if (!aal && !bare && !under) continue;
        const at = { step: step.id as string, field: 'value' };
        const elevation = formatNumber(card.elevation);
        const altitude = formatNumber(card.elevation + figure.value);
        const witness = wordsOf('value', step.value, figure.from, figure.to);
        const data = { value, code: card.code, altitude, elevation };
        const fixed = `${altitude} ft MSL`;
        const end = figure.to + (aal ? ' AAL'.length : 0);
        const text = step.value.slice(0, figure.from) + fixed + step.value.slice(end);
        const fix = aal ? { fix: { says: `write ${fixed}`, at, value: text } } : {};
        report({ at, message: under ? 'under' : 'reference', data, witness, ...fix, read: [card.elevation] });
      }
    }
    const all = textsOf(procedure, steps).map(({ text }) => text);
    for (const card of cardsOf(library, procedure)) {
      if (!high(card.elevation)) continue;
      for (const [what, said] of LOOKED_AT) {
        if (all.some((text) => said.test(text))) continue;
        const at = { step: '', field: 'entry.also' };
        const elevation = formatHeight(card.elevation as Feet).replace(' ft', '');
        const data = { what, code: card.code, elevation };
        const read = [card.elevation, policy.gates.highAerodrome];
        report({
          at,
          message: 'silent',
          data,
          witness: absent('entry.also'),
          cause: `high-aerodrome ${card.code}`,
          read,
        });
      }
    }
  },
});
