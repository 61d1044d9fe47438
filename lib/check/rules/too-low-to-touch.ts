import type { Gate } from '../../gate/syntax.ts';
import type { StepState } from '../../procedure/walk.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const HANDS = new Set(['set', 'select', 'press', 'move', 'arm', 'engage', 'disengage']);
const TOUCHES =
  /\b(flaps?|speedbrakes?|heading|thrust levers?|levers|autothrust|route page|radio|speed selector|HEADING|ROUTE)\b/i;

/** Height above the aerodrome that a way of the cue waits for, ft. */
function heightOf(way: readonly Gate[]): number | null {
  for (const part of way) {
    if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.right.kind !== 'amount') continue;
    const low = part.left.measure === 'height' || part.left.measure === 'radio-height';
    if (low && part.op !== '<' && part.op !== '<=') return part.right.value;
  }
  return null;
}

export const tooLowToTouch = defineRule({
  id: 'too-low-to-touch',
  number: 63,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: ['take-off', 'go-around'],
  title: 'Too low to touch',
  says: "No configuration, heading, thrust or head-down action below the policy's house floor. Gear, the first go-around flap and memory items are exempt.",
  why: 'Near the ground hands and eyes belong to the path.',
  source: { text: '14 CFR 25.111', seen: false },
  needs: ['policy'],
  reads: ['cue', 'verb', 'object', 'flags'],
  messages: {
    low: '{what} at {height} ft: below {floor} ft hands and eyes stay with the path.',
  },
  examples: {
    bad: '{phases: [take-off], entry: {flaps: [F6]}, steps: [{cue: height >= 200 ft AAL, who: PM, verb: press, object: HEADING}]}',
    good: '{phases: [take-off], entry: {flaps: [F6]}, steps: [{cue: height >= 400 ft AAL, who: PM, verb: press, object: HEADING}]}',
  },
  run({ states, policy }, report) {
    const floor = policy.gates.houseFloor;
    const passed = new Map<string, number>();
    for (const at of states) {
      const { step } = at;
      const line = at.branch?.id ?? '';
      const own = at.ways.map(heightOf);
      const least = own.every((height) => height !== null) ? Math.min(...own.map(Number)) : null;
      const height = least ?? passed.get(line) ?? null;
      if (least !== null) passed.set(line, Math.max(least, passed.get(line) ?? 0));
      if (height === null || height >= floor || isExempt(at)) continue;
      const acts = HANDS.has(step.verb) && TOUCHES.test(step.object);
      if (!acts && !step.flags.includes('eyes-down')) continue;
      const what = [step.verb, step.object].filter(Boolean).join(' ');
      const witness = wordsOf('cue', step.cue);
      report({
        at: { step: step.id, field: 'cue' },
        message: 'low',
        data: { what, height, floor },
        witness,
        read: [floor, height],
      });
    }
  },
});

function isExempt({ step, before }: StepState): boolean {
  if (step.flags.includes('memory') || /\bgear\b/i.test(step.object)) return true;
  const goAround = step.verb === 'press' && /\bgo-around\b/i.test(step.object);
  return goAround || (/\bflaps?\b/i.test(step.object) && before.floor === 'goAroundFirstRetraction');
}
