import { floorOf } from '../../envelope/floor.ts';
import { defineRule } from '../rule.ts';
import { askedMoves, floorPhase, isLookedAt, selectionSpeeds } from '../selection.ts';
import { compareOver, envelopeOf, speedOf } from '../speed-question.ts';
import { absent } from '../witness.ts';
import { worst } from '../worst.ts';

export const flapTooSlow = defineRule({
  id: 'flap-too-slow',
  number: 39,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: 'all',
  title: 'Flap too slow',
  says: 'The speed at each retraction is at or above the lowest speed of the new detent (first go-around retraction: VREF of the detent left), at each extension that of the present detent, at every weight. Where the lowest speed lies below VMM, the step limits the bank.',
  why: 'Flap retracted early leaves no margin to the stall.',
  source: { text: 'discussion of a premature flap retraction under investigation', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'say', 'note', 'before'],
  messages: {
    below: '{speed} is below {floor} {where}: there is no margin left to manoeuvre.',
    bank: 'From {from} to {to} the speed may be below VMM {to}, and nothing limits the bank to {bank}°.',
  },
  examples: {
    bad: '{phases: [climb], entry: {flaps: [F6]}, steps: [{cue: speed >= 180 kt and flaps F6 indicated, who: PM, verb: select, object: flap lever, value: F0, say: speed checked … zero}]}',
    good: '{phases: [climb], entry: {flaps: [F6]}, steps: [{cue: speed >= VMM F0 and flaps F6 indicated, who: PM, verb: select, object: flap lever, value: F0, say: speed checked … zero}]}',
  },
  run({ states, sheet, policy, procedure, unasked }, report) {
    const domain = envelopeOf(procedure, sheet);
    for (const here of states) {
      const { step } = here;
      const at = { step: step.id as string, field: 'cue' };
      const bad = worst();
      for (const move of askedMoves(here)) {
        const phase = floorPhase(here, move);
        const held = move.way === 'retract' ? move.to : move.from;
        const floor = floorOf(sheet, policy.floors, phase, held, move.from);
        if (floor === null) {
          unasked(`the sheet gives no lowest speed for ${held}`, at);
          continue;
        }
        const said = `${step.note} ${step.value} ${step.checkSees} ${step.before.map((notice) => notice.text).join(' ')}`;
        const eases = move.way === 'retract' && (phase === 'goAroundFirstRetraction' || phase === 'engineOut');
        if (eases && !/\bbank\b/i.test(said) && !floor.name.startsWith('VMM')) {
          const data = { from: move.from, to: move.to, bank: policy.speeds.bankBelowVmm };
          report({
            at: { ...at, field: 'note' },
            message: 'bank',
            data,
            witness: absent('note'),
            read: [floor.name, phase, policy.speeds.bankBelowVmm],
          });
        }
        for (const { atMost, atLeast } of selectionSpeeds(here)) {
          // The moment that a falling speed reaches its bound is the moment of selection.
          const bounds = atLeast.length > 0 ? atLeast : atMost;
          const target = here.before.target.kind === 'expression' ? [here.before.target.term] : [];
          const asked = bounds.length > 0 || isLookedAt(here) ? bounds : target;
          if (asked.length === 0 && !isLookedAt(here)) {
            unasked(`from ${move.from} to ${move.to} the step says no speed, and nobody says "speed checked"`, at);
          }
          const answers = asked.map((term) => {
            const speed = speedOf(term, held, sheet, policy);
            return { speed, verdict: speed.ok ? compareOver(speed.value, '>=', floor, domain) : null };
          });
          if (answers.some(({ verdict }) => verdict?.kind === 'holds')) continue;
          for (const { speed, verdict } of answers) {
            if (!speed.ok) unasked(speed.error, at);
            else if (verdict?.kind === 'undecided') unasked(verdict.because, at);
            else if (verdict?.kind === 'fails') bad.take({ verdict, speed: speed.value, other: floor });
          }
        }
      }
      if (bad.found === null) continue;
      const { speed, other, verdict } = bad.found;
      report({
        at,
        message: 'below',
        data: { speed: speed.name, floor: other.name, where: verdict.where },
        witness: verdict.witness,
        cause: `flap-too-slow ${other.name}`,
        read: [other.name, JSON.stringify(other.expression), JSON.stringify(domain)],
      });
    }
  },
});
