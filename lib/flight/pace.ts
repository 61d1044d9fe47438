// How long words and hands take, from the operator's policy: an order, then the hand, then the words that close the step.
import type { Policy } from '../policy/policy.ts';
import type { Step } from '../procedure/procedure.ts';

export type Pace = {
  /** s from the cue to the hand, and from the hand to the end of the step. */
  readonly before: number;
  readonly after: number;
};
export const AT_ONCE: Pace = { before: 0, after: 0 };

const count = (text: string): number => text.split(/\s+/).filter((word) => /\w/.test(word)).length;

export function paceOf(step: Step, policy: Policy): Pace {
  const { durations } = policy;
  const spoken = (text: string): number => count(text) / durations.speechWordsPerSecond;
  const before = spoken(step.orderWords);
  const object = step.object.toLowerCase();
  const hand = ((): number => {
    if (/\bradio\b/.test(object)) return durations.radio;
    if (/\b(list|checklist)\b/.test(object)) return durations.challengeResponse * 3;
    if (/\bpage\b/.test(object)) return durations.dataEntry;
    if (/\baltitude selector\b/.test(object)) return durations.setAltitude;
    if (step.verb === 'press' || step.verb === 'engage' || step.verb === 'disengage') return durations.pressAndRead;
    if (step.verb === 'select' || step.verb === 'move' || step.verb === 'set') return durations.lever;
    return 0;
  })();
  return { before, after: Math.max(hand, spoken(step.say)) + spoken(step.reply) };
}
