import { type Kin, members, namesOf } from '../family.ts';
import { defineRule } from '../rule.ts';
import { modesAgree, type Sister } from '../sister.ts';
import { inOrder } from '../witness.ts';

/** The fields in which steps of one family agree, and those that may be the one in which they don't. */
const COMPARED = ['trigger', 'only', 'who', 'order', 'verb', 'object', 'value'] as const;
const SINGLED = { value: 'value', verb: 'verb', order: 'order' } as const;
type Singled = keyof typeof SINGLED;
const FIELD = { value: 'value', verb: 'verb', order: 'orderWords' } as const;

/** The one field in which they differ; null: none, or more, or another one. */
function onlyDifference(a: Sister, b: Sister): Singled | 'none' | null {
  const differing = COMPARED.filter((field) => a[field] !== b[field]);
  if (!modesAgree(a.modes, b.modes) || differing.length > 1) return null;
  const [field] = differing;
  if (field === undefined) return 'none';
  return field in SINGLED ? (field as Singled) : null;
}

export const sameWordsDifferentValue = defineRule({
  id: 'same-words-different-value',
  number: 37,
  severity: 'ADVICE',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Same words, different value',
  says: 'Two steps of one family that agree in trigger, actor, order, verb, object, value and modes but for one field, where that field is the value, the verb or the order, are the same step with another figure: the same value, or a recorded reason. Fields are compared, never sentences.',
  why: 'A copy that drifts is read as the one that everybody knows.',
  source: { text: 'House catalogue of checks: hidden divergence between sister procedures', seen: true },
  needs: ['others'],
  reads: ['cue', 'only', 'who', 'orderBy', 'orderWords', 'verb', 'object', 'value', 'expect', 'family', 'why'],
  messages: {
    differs:
      'The {what} is "{mine}" here and "{theirs}" in {where}, all else being the same: say why, or say the same.',
  },
  examples: {
    bad: '{steps: [{label: XX-01, family: gate-altitude, cue: height >= 1 000 ft AAL, who: PM, verb: set, object: altitude selector, value: 4 000 ft MSL}], others: [{steps: [{label: YY-01, family: gate-altitude, cue: height >= 1 000 ft AAL, who: PM, verb: set, object: altitude selector, value: 3 000 ft MSL}]}]}',
    good: '{steps: [{label: XX-01, family: gate-altitude, cue: height >= 1 000 ft AAL, who: PM, verb: set, object: altitude selector, value: 4 000 ft MSL, why: higher ground to the north}], others: [{steps: [{label: YY-01, family: gate-altitude, cue: height >= 1 000 ft AAL, who: PM, verb: set, object: altitude selector, value: 3 000 ft MSL}]}]}',
  },
  run({ procedure, steps, others }, report) {
    for (const { sister, kin } of members(procedure, steps, others)) {
      if (sister.reason) continue;
      let same = 1;
      const other = new Map<string, { field: Singled; theirs: string; count: number; who: Kin[] }>();
      for (const each of kin) {
        const field = onlyDifference(sister, each.sister);
        if (field === 'none') same += each.count;
        if (field === null || field === 'none' || each.sister.reason) continue;
        const theirs = each.sister[field];
        const key = `${field} ${theirs}`;
        const there = other.get(key) ?? { field, theirs, count: 0, who: [] };
        other.set(key, { ...there, count: there.count + each.count, who: [...there.who, each] });
      }
      const most = [...other.values()].sort((a, b) => b.count - a.count)[0];
      // Where more say it as it is said here, the others are asked.
      if (most === undefined || most.count < same) continue;
      const { field, theirs } = most;
      const mine = sister[field];
      const where = namesOf(most.who.flatMap((each) => each.called()));
      const witness = inOrder(mine, theirs, `${sister.called}: "${mine}"; ${where}: "${theirs}"`);
      const at = { step: sister.step, field: FIELD[field] };
      const cause = `family ${sister.family} ${sister.step}`;
      report({
        at,
        message: 'differs',
        data: { what: SINGLED[field], mine, theirs, where },
        witness,
        cause,
        read: [theirs, most.count],
      });
    }
  },
});
