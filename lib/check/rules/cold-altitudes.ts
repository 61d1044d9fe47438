import { formatNumber } from '../../units/format.ts';
import { cardsOf } from '../cards.ts';
import { type Charted, chartedIn, coldWords, temperatureAt } from '../cold-chart.ts';
import { coldFigures } from '../cold-figures.ts';
import { defineRule } from '../rule.ts';
import { TEXT_FIELDS, textsOf } from '../texts.ts';
import { absent, wordsOf } from '../witness.ts';

const ADVISED = /\b(correct(ed|ion)s?|cold)\b/i;
const TELLS = new Set(['call', 'request', 'respond']);
const SOURCE = /\b(cold[- ]temperature|correction) table\b|\btable (of|from|for) (the )?(State|chart|cold|correction)/i;

export const coldAltitudes = defineRule({
  id: 'cold-altitudes',
  number: 73,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: ['approach', 'landing'],
  title: 'Altitudes in the cold',
  says: "At a card's aerodrome below the policy's temperature exactly the listed altitudes are corrected: final approach fix, steps down, minima, missed approach, rounded up to what can be set; the controller is told, the table is named. Gates above the aerodrome, departures and vectored altitudes are not corrected.",
  why: 'At −28 °C the altimeter shows 176 ft too much in each 1 000 ft: the charted altitude is flown into the obstacle.',
  source: { text: 'ICAO Doc 8168, cold temperature corrections', seen: true },
  needs: ['library', 'policy'],
  reads: TEXT_FIELDS,
  messages: {
    uncorrected:
      '{name} {charted} ft at {code}, {temperature} °C: {corrected} ft is to be flown, set {set} ft; the figure here takes the aircraft {low} ft too low.',
    wrong:
      '{name} at {code}, {temperature} °C, is set {set} ft ({charted} ft is {corrected} ft in the cold), not {figure} ft.',
    unstated:
      '{name} of {code} has no corrected figure: {charted} ft is {corrected} ft at {temperature} °C, set {set} ft.',
    advise: 'No step advises ATC of the corrected altitudes: the level above may be given to another aircraft.',
    source: 'The source of the corrections is not named: nobody can check the figures against the table.',
  },
  examples: {
    bad: '{phases: [approach], class: cold-weather, title: "Approach at QVDS, −28 °C", steps: [{cue: then, who: PF, verb: set, object: altitude selector, value: 1 500 ft MSL}]}',
    good: '{phases: [approach], title: Approach at QVDS, steps: [{cue: then, who: PF, verb: set, object: altitude selector, value: 1 500 ft MSL}]}',
  },
  run({ procedure, steps, library, policy }, report) {
    for (const card of cardsOf(library, procedure)) {
      const temperature = temperatureAt(card, procedure);
      if (temperature === null || temperature >= policy.gates.cold.below) continue;
      const list = chartedIn(card, temperature, policy);
      const texts = textsOf(procedure, steps);
      const say = (each: Charted) => coldWords(each, card, temperature);
      const read = [temperature, card.elevation, policy.gates.cold.selector, policy.gates.cold.minima];
      const found = coldFigures(procedure, steps, list);
      for (const { at, text, figure, of, is } of found) {
        if (is === 'right') continue;
        const value = `${text.slice(0, figure.from)}${formatNumber(of.set)} ft${text.slice(figure.to)}`;
        report({
          at,
          message: is,
          data: { ...say(of), figure: formatNumber(figure.value), low: of.corrected - of.charted },
          witness: wordsOf(at.field, text, figure.from, figure.to),
          cause: `cold-altitudes ${card.code} ${of.name}`,
          fix: { says: `write ${formatNumber(of.set)} ft`, at, value },
          read,
        });
      }
      const place = { step: '', field: 'steps' };
      for (const each of list) {
        if (found.some(({ of }) => of === each)) continue;
        report({
          at: place,
          message: 'unstated',
          data: say(each),
          witness: absent(each.name),
          cause: `cold-altitudes ${card.code} ${each.name}`,
          read,
        });
      }
      const told = steps.some(
        ({ verb, object, value, say: words }) =>
          TELLS.has(verb) && /radio|controller|ATC/i.test(object) && ADVISED.test(`${value} ${words}`),
      );
      if (!told) report({ at: place, message: 'advise', witness: absent('advise ATC'), read });
      const sources = [...texts.map(({ text }) => text), procedure.rationale, ...steps.map(({ source }) => source)];
      if (!sources.some((text) => SOURCE.test(text)))
        report({ at: place, message: 'source', witness: absent('table'), read });
    }
  },
});
