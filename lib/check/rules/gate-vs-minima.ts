import type { Gate } from '../../gate/syntax.ts';
import type { Step } from '../../procedure/procedure.ts';
import { formatHeight } from '../../units/format.ts';
import type { Feet } from '../../units/quantity.ts';
import { cardsAt, highestBy } from '../cards.ts';
import { defineRule } from '../rule.ts';
import { absent, wordsOf } from '../witness.ts';

const GATE = /\bgate\b|\bstab(le|ili[sz]ed)\b/i;
const CIRCLING = /\bcircling|circle to land\b/i;
const DECIDES = /\bgo(ing)? around\b|\blanding\b|\bminima\b/i;

/** Height of a part of a cue that the path falls through, ft AAL. */
function height(part: Gate): number | null {
  if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.right.kind !== 'amount') return null;
  const down = part.op === '<' || part.op === '<=';
  return down && part.left.measure === 'height' ? part.right.value : null;
}

/** ft that a part of a cue lies below the minima: `altitude <= minima - 50 ft`. */
function belowMinima(part: Gate): number | null {
  if (part.kind !== 'compare' || part.right.kind !== 'sum' || part.right.sign !== '-') return null;
  const { left, right } = part.right;
  return left.kind === 'altitude' && left.name === 'minima' && right.kind === 'amount' ? right.value : null;
}

const isGate = ({ verb, object, value, say }: Step): boolean =>
  ['check', 'call', 'monitor', 'decide', 'read'].includes(verb) && GATE.test(`${object} ${say} ${value}`);

export const gateVsMinima = defineRule({
  id: 'gate-vs-minima',
  number: 71,
  severity: 'ANSWER',
  kind: 'N',
  stage: 'writing',
  phases: ['approach', 'landing'],
  title: 'Gate and minima',
  says: 'Each stable gate lies above the minima of the card, or of every card where the procedure is for all; the decision is made at the minima and not below; where a text speaks of circling, circling has a gate.',
  why: 'A gate below the minima is judged when the decision is already made.',
  source: { text: 'Flight Safety Foundation, stabilised approach elements', seen: false },
  needs: ['library'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'say'],
  messages: {
    low: 'The gate at {gate} AAL is not above the {kind} of {code}, {minima} AAL: it is judged after the decision.',
    late: 'The decision comes {below} ft below the minima: the go-around begins under the height that protects it.',
    circling: 'The text speaks of circling and has no gate for it: nobody says when the circle is given up.',
  },
  examples: {
    bad: '{phases: [approach], title: Approach at QAMB, steps: [{cue: height <= 500 ft AAL, who: PM, verb: check, object: stable gate}]}',
    good: '{phases: [approach], title: Approach at QAMB, steps: [{cue: height <= 1 000 ft AAL, who: PM, verb: check, object: stable gate}]}',
  },
  run({ states, procedure, library }, report) {
    const feet = (value: number): string => formatHeight(value as Feet);
    for (const { step, ways } of states) {
      const at = { step: step.id as string, field: 'cue' };
      const below = ways.flatMap((way) => way.map(belowMinima)).find((each) => each !== null);
      if (
        below !== undefined &&
        below !== null &&
        below > 0 &&
        DECIDES.test(`${step.object} ${step.say} ${step.value}`)
      ) {
        report({ at, message: 'late', data: { below }, witness: wordsOf('cue', step.cue) });
      }
      if (!isGate(step)) continue;
      const gate = ways.flatMap((way) => way.map(height)).find((each) => each !== null);
      if (gate === undefined || gate === null) continue;
      const bound = cardsAt(library, procedure, step);
      const card = highestBy(bound.length > 0 ? bound : library.aerodromes, ({ minima }) => minima.height);
      if (card === null || gate > card.minima.height) continue;
      const { kind, height: minima } = card.minima;
      const data = { gate: feet(gate), kind, code: card.code, minima: feet(minima) };
      const says = `gate ${feet(gate)} AAL, ${kind} ${feet(minima)} AAL at ${card.code}`;
      const witness = { kind: 'envelope', at: { gate, minima }, says } as const;
      report({ at, message: 'low', data, witness, cause: `gate-vs-minima ${card.code}`, read: [minima] });
    }
    const circling = states.find(({ step }) => CIRCLING.test(`${step.object} ${step.value} ${step.only}`));
    const named = circling !== undefined || CIRCLING.test(procedure.title);
    if (!named || states.some(({ step }) => isGate(step) && CIRCLING.test(`${step.object} ${step.value} ${step.only}`)))
      return;
    const at = { step: circling?.step.id ?? '', field: circling === undefined ? 'title' : 'value' };
    report({ at, message: 'circling', witness: absent('value') });
  },
});
