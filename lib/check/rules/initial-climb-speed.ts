import { speedExpression } from '../../aircraft/schedule.ts';
import { add, number } from '../../base/expression.ts';
import { defineRule } from '../rule.ts';
import { compareOver, envelopeOf, type Speed, speedOf } from '../speed-question.ts';
import { worst } from '../worst.ts';

export const initialClimbSpeed = defineRule({
  id: 'initial-climb-speed',
  number: 50,
  severity: 'ANSWER',
  kind: 'N',
  stage: 'writing',
  phases: ['take-off', 'initial climb'],
  title: 'Speed of the initial climb',
  says: "Until the acceleration altitude the target lies between V2 and the policy's least and most additions, for every take-off detent and weight; with an engine out between V2 and the take-off target.",
  why: 'A noise procedure is shown for V2 + 10 to 20 kt: slower it has no margin, faster it is no such procedure.',
  source: { text: 'ICAO Doc 8168, noise abatement departure examples', seen: false },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'only', 'verb', 'object', 'value'],
  messages: {
    slow: 'The target {target} is below {limit} {where}: the first climb is flown without its margin.',
    fast: 'The target {target} is above {limit} {where}: the path is flatter than the procedure was shown for.',
  },
  examples: {
    bad: '{phases: [take-off], entry: {flaps: [F6], gear: down, speed: V2 + 5 kt, vertical: [DEPART]}, steps: [{cue: height >= 400 ft AAL, who: PM, verb: read, object: mode line}]}',
    good: '{phases: [take-off], entry: {flaps: [F6], gear: down, speed: V2 + 15 kt, vertical: [DEPART]}, steps: [{cue: height >= 400 ft AAL, who: PM, verb: read, object: mode line}]}',
  },
  run({ states, procedure, sheet, policy, unasked }, report) {
    const domain = envelopeOf(procedure, sheet);
    const { initialClimb, takeOffTarget } = policy.speeds;
    const asked = new Set<string>();
    for (const { step, before, done } of states) {
      for (const [state, mine] of [
        [before, false],
        [done, true],
      ] as const) {
        const { target, floor } = state;
        if ((floor !== 'takeOff' && floor !== 'engineOut') || target.kind !== 'expression') continue;
        if (mine !== (target.setBy === step.id) || asked.has(target.setBy) || (target.setBy !== '' && !mine)) continue;
        asked.add(target.setBy);
        const at = { step: target.setBy, field: target.setBy === '' ? 'entry.speed' : 'value' };
        const out = floor === 'engineOut';
        const [least, most] = out ? [0, takeOffTarget] : [initialClimb.least, initialClimb.most];
        const [slow, fast] = [worst(), worst()];
        for (const detent of state.selected) {
          const speed = speedOf(target.term, detent, sheet, policy);
          const v2 = speedExpression(sheet, { name: 'V2', detent, icing: false });
          if (!speed.ok || v2 === null) {
            unasked(speed.ok ? `the sheet gives no V2 for ${detent}` : speed.error, at);
            continue;
          }
          const edge = (plus: number): Speed => ({
            name: `V2 ${detent}${plus === 0 ? '' : ` + ${plus} kt`}`,
            expression: plus === 0 ? v2 : add(v2, number(plus)),
          });
          for (const [op, other, into] of [
            ['>=', edge(least), slow],
            ['<=', edge(most), fast],
          ] as const) {
            const verdict = compareOver(speed.value, op, other, domain);
            if (verdict.kind === 'undecided') unasked(verdict.because, at);
            if (verdict.kind === 'fails') into.take({ verdict, speed: speed.value, other });
          }
        }
        for (const [message, bad] of [
          ['slow', slow],
          ['fast', fast],
        ] as const) {
          if (bad.found === null) continue;
          const { verdict, speed, other } = bad.found;
          const data = { target: speed.name, limit: other.name, where: verdict.where };
          report({ at, message, data, witness: verdict.witness, read: [least, most, JSON.stringify(domain)] });
        }
      }
    }
  },
});
