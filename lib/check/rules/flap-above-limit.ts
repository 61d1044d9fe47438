import { detentNamed } from '../../aircraft/limits.ts';
import { number } from '../../base/expression.ts';
import { defineRule } from '../rule.ts';
import { askedMoves, isLookedAt, selectionMargin, selectionSpeeds } from '../selection.ts';
import { compareOver, envelopeOf, type Speed, speedOf } from '../speed-question.ts';
import { worst } from '../worst.ts';

export const flapAboveLimit = defineRule({
  id: 'flap-above-limit',
  number: 38,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: 'all',
  title: 'Flap above its limit',
  says: "The speed at each selection is at or below VFE less the policy's margin of every detent involved, the one left and those passed included, at every weight and wind of the envelope.",
  why: 'Flap was driven above its limit in a go-around and after wrong take-off speeds.',
  source: { text: 'ATSB AO-2018-034; ASRS 783798', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'say'],
  messages: {
    above: '{speed} is above {limit} {where}: the flap would be moved faster than it may be.',
  },
  examples: {
    bad: '{phases: [approach], steps: [{cue: speed <= 235 kt, who: PM, verb: select, object: flap lever, value: F6}]}',
    good: '{phases: [approach], steps: [{cue: speed <= VFE F6 - 5 kt, who: PM, verb: select, object: flap lever, value: F6}]}',
  },
  run({ states, sheet, policy, procedure, unasked }, report) {
    const domain = envelopeOf(procedure, sheet);
    for (const here of states) {
      const at = { step: here.step.id as string, field: 'cue' };
      const margin = selectionMargin(here, policy);
      const bad = worst();
      for (const move of askedMoves(here)) {
        const limits = move.through.flatMap((detent): Speed[] => {
          const vfe = detentNamed(sheet, detent)?.vfe?.value;
          return vfe === undefined ? [] : [{ name: `VFE ${detent} - ${margin} kt`, expression: number(vfe - margin) }];
        });
        for (const { atMost, atLeast } of selectionSpeeds(here)) {
          const target = here.before.target.kind === 'expression' ? [here.before.target.term] : [];
          const bounded = atMost.length > 0 || isLookedAt(here);
          const flown = bounded || atLeast.length > 0 ? [] : target;
          if (!bounded && flown.length === 0) {
            unasked(
              `from ${move.from} to ${move.to} the step puts no upper limit on the speed, and nobody says "speed checked"`,
              at,
            );
          }
          // One upper bound below the limit is enough; every lower bound must leave room for a right speed.
          const tightest = atMost.length > 0 ? [atMost] : [];
          const questions = [...tightest, ...atLeast.map((term) => [term]), ...flown.map((term) => [term])];
          for (const [limit, terms] of limits.flatMap((each) =>
            questions.map((question) => [each, question] as const),
          )) {
            const answers = terms.map((term) => {
              const speed = speedOf(term, move.from, sheet, policy);
              return { speed, verdict: speed.ok ? compareOver(speed.value, '<=', limit, domain) : null };
            });
            if (answers.some(({ verdict }) => verdict?.kind === 'holds')) continue;
            for (const { speed, verdict } of answers) {
              if (!speed.ok) unasked(speed.error, at);
              else if (verdict?.kind === 'undecided') unasked(verdict.because, at);
              else if (verdict?.kind === 'fails') bad.take({ verdict, speed: speed.value, other: limit });
            }
          }
        }
      }
      if (bad.found === null) continue;
      const { speed, other, verdict } = bad.found;
      report({
        at,
        message: 'above',
        data: { speed: speed.name, limit: other.name, where: verdict.where },
        witness: verdict.witness,
        cause: `flap-above-limit ${other.name}`,
        read: [other.name, JSON.stringify(other.expression), JSON.stringify(domain)],
      });
    }
  },
});
