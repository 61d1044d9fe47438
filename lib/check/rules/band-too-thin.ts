import { detentNamed } from '../../aircraft/limits.ts';
import { speedExpression } from '../../aircraft/schedule.ts';
import { number, sub } from '../../base/expression.ts';
import { defineRule } from '../rule.ts';
import { askedMoves } from '../selection.ts';
import { compareOver, envelopeOf } from '../speed-question.ts';

export const bandTooThin = defineRule({
  id: 'band-too-thin',
  number: 41,
  severity: 'ANSWER',
  kind: 'N',
  stage: 'writing',
  phases: 'all',
  title: 'Band too thin',
  says: "Between VMM of one detent and VFE of the next lie at least as many knots as the policy's band, at every weight of the envelope. The first retraction of a go-around is measured by its own floor.",
  why: 'A thin band can not be flown: at 78.6 t the band from F26 to F35 is 11.6 kt.',
  source: { text: 'type data of the TN-182, flap rules', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'verb', 'object', 'value'],
  messages: {
    thin: 'Between VMM {lower} and VFE {upper} there are less than {wanted} kt {where}: the window can hardly be flown.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F26]}, steps: [{cue: speed <= VFE F35 - 5 kt, who: PM, verb: select, object: flap lever, value: F35}]}',
    good: '{phases: [approach], envelope: {weight: {from: 46000, to: 66800}}, entry: {flaps: [F26]}, steps: [{cue: speed <= VFE F35 - 5 kt, who: PM, verb: select, object: flap lever, value: F35}]}',
  },
  run({ states, sheet, policy, procedure, unasked }, report) {
    const domain = envelopeOf(procedure, sheet);
    const wanted = policy.speeds.bandMinimum;
    for (const here of states) {
      const at = { step: here.step.id as string, field: 'value' };
      const asked = new Set<string>();
      for (const move of askedMoves(here)) {
        if (move.way === 'retract' && here.before.floor === 'goAroundFirstRetraction') continue;
        const rising = move.way === 'extend' ? move.through : [...move.through].reverse();
        for (const [index, upper] of rising.entries()) {
          const lower = rising[index - 1];
          const vfe = detentNamed(sheet, upper)?.vfe?.value;
          if (lower === undefined || vfe === undefined || asked.has(upper)) continue;
          asked.add(upper);
          const vmm = speedExpression(sheet, { name: 'VMM', detent: lower, icing: false });
          if (vmm === null) {
            unasked(`the sheet gives no VMM for ${lower}`, at);
            continue;
          }
          const band = { name: `the band VMM ${lower} to VFE ${upper}`, expression: sub(number(vfe), vmm) };
          const verdict = compareOver(band, '>=', { name: `${wanted} kt`, expression: number(wanted) }, domain);
          if (verdict.kind === 'undecided') unasked(verdict.because, at);
          if (verdict.kind !== 'fails') continue;
          const data = { lower, upper, wanted, where: verdict.where };
          const cause = `band-too-thin ${lower} ${upper}`;
          report({
            at,
            message: 'thin',
            data,
            witness: verdict.witness,
            cause,
            read: [vfe, JSON.stringify(vmm), wanted, JSON.stringify(domain)],
          });
        }
      }
    }
  },
});
