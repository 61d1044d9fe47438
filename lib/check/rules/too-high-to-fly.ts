import { pinned } from '../../envelope/domain.ts';
import { formatHeight } from '../../units/format.ts';
import type { Feet } from '../../units/quantity.ts';
import { climbDomain, climbOver } from '../climb-question.ts';
import { climbSpeed } from '../climb-speed.ts';
import { defineRule } from '../rule.ts';
import { levelIn } from '../speed-text.ts';

/** The weight is limited by the tables of the operator: they hold the level too. */
const SELECTOR = /\baltitude selector\b|\bselected altitude\b/i;
const BY_TABLE = /\b(ceiling|ft\/min|cruise (table|level))/i;

export const tooHighToFly = defineRule({
  id: 'too-high-to-fly',
  number: 54,
  severity: 'ANSWER',
  kind: 'N',
  stage: 'writing',
  phases: ['climb', 'cruise'],
  title: 'Too high to fly',
  says: "Each level that is climbed to is at most the ceiling of the type, and there the policy's least rate of climb is left at every weight and temperature, unless the procedure limits the weight by the tables for it.",
  why: 'At FL 350 and 78.6 t the climb is 250 ft/min: the level is reached late, and there is no way up and little speed.',
  source: { text: 'type data of the TN-182, thrust and drag', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['verb', 'object', 'value'],
  messages: {
    ceiling: '{level} is above {ceiling}, the ceiling of the type.',
    short:
      'At {weight} t {rate} ft/min are left at {level} of {least} wanted: {limit}, heavier the climb is made in steps.',
  },
  examples: {
    bad: '{phases: [climb], entry: {speed: M 0.77}, envelope: {temperature: {from: 0, to: 0}}, steps: [{cue: then, who: PF, verb: set, object: altitude selector, value: FL 370}]}',
    good: '{phases: [climb], entry: {speed: M 0.77}, envelope: {temperature: {from: 0, to: 0}, weight: {from: 46000, to: 60000}}, steps: [{cue: then, who: PF, verb: set, object: altitude selector, value: FL 330}]}',
  },
  run({ states, procedure, sheet, policy, unasked }, report) {
    const ceiling = sheet.limits.maximumAltitude.value;
    const least = policy.climb.leastRate;
    const levels = new Map<number, { step: string; field: string }>();
    const top = procedure.envelope.level?.to;
    for (const { step } of states) {
      if (!['set', 'select', 'request'].includes(step.verb) || !/altitude|level|radio/i.test(step.object)) continue;
      if (top !== undefined && SELECTOR.test(step.object)) levels.set(top, { step: '', field: 'envelope.level' });
      const level = levelIn(step.value);
      if (level !== null && !levels.has(level)) levels.set(level, { step: step.id, field: 'value' });
    }
    const ft = (feet: number): string => `${formatHeight(feet as Feet)} (FL ${feet / 100})`;
    const speed = climbSpeed(procedure.entry.speed, states);
    const domain = climbDomain(procedure, sheet, { elevation: null, heaviest: sheet.weights.maximumTakeOff.value });
    for (const [level, at] of levels) {
      if (level > ceiling) {
        const witness = {
          kind: 'envelope',
          at: { altitude: level },
          says: `${ft(level)} against ${ft(ceiling)}`,
        } as const;
        report({ at, message: 'ceiling', data: { level: ft(level), ceiling: ft(ceiling) }, witness, read: [ceiling] });
        continue;
      }
      if (BY_TABLE.test(procedure.weightLimit) || domain === null || level < policy.speeds.areaLimit.below) continue;
      if (speed === null) {
        unasked('no climb speed is stated by which the rate could be reckoned', at);
        continue;
      }
      const answer = climbOver(sheet, speed.expression, least, pinned(domain, 'elevation', level), speed.key);
      if (answer.kind === 'undecided') unasked(answer.because, at);
      if (answer.kind !== 'fails') continue;
      const { weight = 0, temperature = 0 } = answer.at;
      const tonnes = (kg: number): string => (kg / 1000).toFixed(1);
      const rate = String(Math.round(answer.worst));
      const limit = answer.limit === null ? 'at no weight enough' : `enough up to ${tonnes(answer.limit)} t`;
      const says = `${tonnes(weight)} t at FL ${level / 100}, ${temperature} °C from standard: ${rate} ft/min`;
      const data = { weight: tonnes(weight), rate, level: `FL ${level / 100}`, least, limit };
      const witness = { kind: 'envelope', at: { ...answer.at, altitude: level }, says } as const;
      report({ at, message: 'short', data, witness, cause: `too-high-to-fly ${level}`, read: [least, speed.key] });
    }
  },
});
