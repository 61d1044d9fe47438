import type { Aerodrome } from '../../library/library.ts';
import { formatNumber } from '../../units/format.ts';
import { cardsAt, highestBy } from '../cards.ts';
import { figuresIn } from '../figures.ts';
import type { Place, Witness } from '../finding.ts';
import { heightGate } from '../noise.ts';
import { defineRule } from '../rule.ts';
import { TEXT_FIELDS, textsOf } from '../texts.ts';
import { absent, wordsOf } from '../witness.ts';

const PATH = /\bengine-out (path|route|track|departure|heading)|\bheading of the card\b/i;
const ACCELERATION = /\bengine[- ]out acceleration\b/i;
const LEVELS = /\b(LEVEL|acceler)/i;
const ALL_ENGINES = /\b(accelerat\w*)\b/i;

export const engineOutPath = defineRule({
  id: 'engine-out-path',
  number: 76,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: ['take-off', 'initial climb', 'go-around'],
  title: 'Path with an engine out',
  says: 'An engine-out take-off says its lateral path and where it accelerates; a height for that is not below the engine-out acceleration of the card, nor the one for all engines.',
  why: 'The obstacle was judged for one path and one height; another one was judged by nobody.',
  source: { text: '14 CFR 25.111, 25.115', seen: false },
  needs: ['library'],
  reads: TEXT_FIELDS,
  messages: {
    low: 'Engine-out acceleration at {height} ft AAL, {code} has {wanted} ft AAL: the obstacle is not cleared in level flight.',
    allEngines:
      'The cue goes by the acceleration altitude for all engines: with an engine out the card has one of its own.',
    path: 'No step says the lateral path with an engine out: the crew flies the one for all engines into the obstacle.',
    vertical: 'No step says where the acceleration with an engine out begins.',
  },
  examples: {
    bad: '{phases: [take-off], class: engine-out, title: Engine-out take-off at QVDS, entry: {flaps: [F12]}, steps: [{cue: height >= 400 ft AAL, who: PM, verb: press, object: HEADING, value: heading of the engine-out path}, {cue: height >= 1 500 ft AAL, who: PF, verb: press, object: LEVEL}]}',
    good: '{phases: [take-off], class: engine-out, title: Engine-out take-off at QVDS, entry: {flaps: [F12]}, steps: [{cue: height >= 400 ft AAL, who: PM, verb: press, object: HEADING, value: heading of the engine-out path}, {cue: height >= 1 600 ft AAL, who: PF, verb: press, object: LEVEL}]}',
  },
  run({ procedure, states, steps, library }, report) {
    const out = procedure.class === 'engine-out' || /\bengine[- ]out\b/i.test(procedure.title);
    const takeOff = procedure.phases.includes('take-off');
    const low = (at: Place, feet: number, card: Aerodrome, witness: Witness): void => {
      const data = { height: formatNumber(feet), code: card.code, wanted: formatNumber(accelerationOf(card)) };
      report({ at, message: 'low', data, witness, read: [accelerationOf(card)] });
    };
    const texts = textsOf(procedure, steps);
    let stated = texts.some(({ text }) => ACCELERATION.test(text));
    for (const { step, ways } of states) {
      const gates = ways.flatMap((way) => way.map(heightGate)).filter((each) => each !== null);
      const accelerates =
        step.verb === 'press' ? LEVELS.test(step.object) : ALL_ENGINES.test(`${step.object} ${step.value}`);
      if (!out || !takeOff || gates.length === 0) continue;
      const at = { step: step.id as string, field: 'cue' };
      for (const { feet, name } of gates) {
        if (name === 'engine-out-acceleration-altitude') stated = true;
        if (name === 'acceleration-altitude') {
          stated = true;
          report({ at, message: 'allEngines', witness: wordsOf('cue', step.cue) });
        }
        if (feet === null || !accelerates) continue;
        stated = true;
        const card = highestBy(cardsAt(library, procedure, step), accelerationOf);
        if (card === null || feet >= accelerationOf(card)) continue;
        low(at, feet, card, wordsOf('cue', step.cue));
      }
    }
    for (const { at, text } of texts) {
      if (!ACCELERATION.test(text)) continue;
      const step = steps.find(({ id }) => id === at.step);
      const card = highestBy(step === undefined ? [] : cardsAt(library, procedure, step), accelerationOf);
      const from = ACCELERATION.exec(text)?.index ?? 0;
      const figure = figuresIn(text).find(
        (each) => each.from > from && each.unit === 'ft' && /^AAL\b/i.test(each.behind),
      );
      if (card === null || figure === undefined || figure.value >= accelerationOf(card)) continue;
      const witness = wordsOf(at.field, text, figure.from, figure.to);
      low(at, figure.value, card, witness);
    }
    if (!out || !takeOff) return;
    const place = { step: '', field: 'steps' };
    const heads = states.some(({ step }) => PATH.test(`${step.object} ${step.value} ${step.checkSees}`));
    if (!heads) report({ at: place, message: 'path', witness: absent('engine-out path') });
    if (!stated) report({ at: place, message: 'vertical', witness: absent('engine-out acceleration altitude') });
  },
});

const accelerationOf = (card: Aerodrome): number => card.engineOutAccelerationHeight;
