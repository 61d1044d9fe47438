import type { Gate } from '../../gate/syntax.ts';
import type { StepState } from '../../procedure/walk.ts';
import { formatHeight } from '../../units/format.ts';
import type { Feet } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const ALOFT = new Set(['climb', 'cruise', 'descent', 'holding']);

/** The altitude that a part of the cue asks for, ft, and on which side; heights above the aerodrome are low enough. */
function altitude(part: Gate): { readonly value: number; readonly atLeast: boolean } | null {
  if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.right.kind !== 'amount') return null;
  const { measure } = part.left;
  if (measure !== 'altitude' && measure !== 'flight-level') return null;
  const level = part.right.reference === 'FL' || measure === 'flight-level';
  const feet = level && part.right.value < 1_000 ? part.right.value * 100 : part.right.value;
  return { value: feet, atLeast: part.op === '>' || part.op === '>=' || part.op === '=' };
}

const onGround = (at: StepState): boolean =>
  at.ways.every((way) =>
    way.some(
      (part) =>
        part.kind === 'compare' &&
        part.left.kind === 'measure' &&
        (part.left.measure === 'height' || part.left.measure === 'radio-height'),
    ),
  );

export const flapTooHigh = defineRule({
  id: 'flap-too-high',
  number: 43,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: ['climb', 'cruise', 'descent', 'holding', 'approach'],
  title: 'Flap too high',
  says: "Flap is out only below the sheet's altitude limit for flap: the cue, or the levels of the procedure, keep it there.",
  why: 'Above its limit the flap has not been shown to hold.',
  source: { text: 'type data of the TN-182, limits', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value'],
  messages: {
    high: '{flap} is selected {where}; the limit for flap is {limit}.',
  },
  examples: {
    bad: '{phases: [holding], envelope: {level: {from: 6000, to: 22000}}, steps: [{cue: speed <= 230 kt, who: PM, verb: select, object: flap lever, value: F6}]}',
    good: '{phases: [holding], envelope: {level: {from: 6000, to: 20000}}, steps: [{cue: speed <= 230 kt, who: PM, verb: select, object: flap lever, value: F6}]}',
  },
  run({ states, sheet, procedure, unasked }, report) {
    const limit = sheet.limits.flapAltitude.value;
    const clean = sheet.detents[0]!.name;
    const ft = (value: number): string => formatHeight(value as Feet);
    const aloft = procedure.phases.some((phase) => ALOFT.has(phase));
    for (const here of states) {
      const { step, selection } = here;
      const at = { step: step.id as string, field: 'cue' };
      const flap = selection?.find((name) => name !== clean);
      // A retraction finds the flap out already: what selected it was asked there.
      if (flap === undefined || (here.before.flapsKnown && !here.moves.some((move) => move.way === 'extend'))) continue;
      const bounds = here.ways.map((way) => way.map(altitude).filter((each) => each !== null));
      const above = bounds.flat().find((each) => each.atLeast && each.value > limit);
      const kept = bounds.every((way) => way.some((each) => !each.atLeast && each.value <= limit));
      const top = procedure.envelope.level?.to;
      const say = (where: string): void => {
        const data = { flap, where, limit: ft(limit) };
        report({
          at,
          message: 'high',
          data,
          witness: wordsOf('cue', step.cue),
          cause: `flap-too-high ${ft(limit)}`,
          read: [limit, top ?? 0],
        });
      };
      if (above !== undefined) say(`at ${ft(above.value)} or above`);
      else if (kept || onGround(here) || !aloft) continue;
      else if (top === undefined)
        unasked('neither the cue nor the envelope says up to which altitude the flap is out', at);
      else if (top > limit) say(`at any altitude up to ${ft(top)}`);
    }
  },
});
