// One step as what is ordered, done, said and answered, each with its duration from the operator's policy.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Policy } from '../policy/policy.ts';
import { conjuncts } from '../procedure/cue.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import type { Procedure, Role, Step } from '../procedure/procedure.ts';
import type { Pilot } from './timeline.ts';
import type { Trace } from './trace.ts';

export type Crew = {
  readonly procedure: Procedure;
  readonly trace: Trace;
  readonly policy: Policy;
  readonly sheet: Sheet;
  /** How many items the list has that a step reads; null: the step reads none, or nobody knows. */
  readonly items: (step: Step) => number | null;
  /** Whether the flight moved the hand of a step at a time of its own: such a moment says nothing of the cue. */
  readonly forced: (step: Step) => boolean;
};

export type Part = {
  readonly name: 'order' | 'act' | 'say' | 'reply';
  readonly who: readonly (Pilot | null)[];
  readonly does: string;
  readonly takes: number;
  /** s before its words begin; null: nothing is said. */
  readonly speaks: number | null;
};

type Durations = Policy['durations'];

const OUTSIDE = /^\((radio|cabin|company)\)/i;
/** Spoken words of a text; what stands in brackets is not spoken. */
const wordCount = (text: string): number =>
  text
    .replaceAll(/\([^)]*\)/g, ' ')
    .split(/[\s–—-]+/)
    .filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
const spoken = (text: string, { speechWordsPerSecond }: Durations): number => wordCount(text) / speechWordsPerSecond;

/** Steps of no duration (a guard, a wait, a decision: what stands before the flight begins) have no parts but words; a step has at most four. */
export function partsOf(step: Step, { durations }: Policy, items: number | null): readonly Part[] {
  const sayer = step.sayBy === '' ? step.who : step.sayBy;
  const answerer = step.replyBy === '' ? otherThan(sayer) : step.replyBy;
  const sayTakes = step.say === '' ? 0 : isOutside(step) ? durations.radio : spoken(step.say, durations);
  const replyTakes = step.reply === '' ? 0 : replyLasts(step, sayTakes, durations);
  const ordered = step.orderWords !== '' && !isHeard(step);
  const reading = (sayer === step.who ? 0 : sayTakes) + replyTakes;
  const hands = handsOf(step, durations, items, reading, sayer === step.who ? sayTakes : 0);
  const deed = [step.verb, step.object, step.value].filter(Boolean).join(' ');
  const own = sayer === step.who && sayTakes > 0;
  // Who acts and speaks does both in one: the words are the end of it.
  const takes = own ? Math.max(hands, sayTakes) : hands;
  const act = own
    ? part(
        hands > 0 ? 'act' : 'say',
        step.who,
        hands > 0 ? `${deed}, “${step.say}”` : `“${step.say}”`,
        takes,
        takes - sayTakes,
      )
    : part('act', step.who, deed, takes, items !== null && step.verb === 'read' ? 0 : null);
  const all: readonly Part[] = [
    part('order', step.orderBy, `“${step.orderWords}”`, ordered ? spoken(step.orderWords, durations) : 0, 0),
    act,
    part('say', sayer, `“${step.say}”`, own ? 0 : sayTakes, 0),
    part('reply', answerer, `“${step.reply}”`, replyTakes, 0),
  ];
  return all.filter((one) => one.takes > 0);
}

const part = (name: Part['name'], role: Role | '', does: string, takes: number, speaks: number | null): Part => ({
  name,
  who: name !== 'act' && role === 'each' ? ['PF'] : pilotsOf(role),
  does,
  takes,
  speaks,
});

const otherThan = (role: Role | ''): Role => (role === 'PM' || role === 'first officer' ? 'PF' : 'PM');

const isOutside = (step: Step): boolean =>
  OUTSIDE.test(step.say) || (/^(call|request)$/.test(step.verb) && /\bradio\b/i.test(step.object));

/** The order of a step that waits to hear those words has been given already. */
const isHeard = (step: Step): boolean =>
  conjuncts(parsedCue(step.cue).gate).some((one) => one.kind === 'heard' && one.words === step.orderWords);

/** A challenge and its response take their time together, longer where the words do; a call and its answer are words alone. */
function replyLasts(step: Step, sayTakes: number, durations: Durations): number {
  const words = spoken(step.reply, durations);
  const exchange = step.say !== '' && !isOutside(step) && step.verb === 'respond';
  return exchange ? Math.max(words, durations.challengeResponse - sayTakes) : words;
}

/** How long the step takes its actor beside the words of others: `reading` belongs to what the policy counts as one. */
function handsOf(step: Step, durations: Durations, items: number | null, reading: number, own: number): number {
  // A press and its reading are one figure of the policy: half of it the hand, half of it the look.
  const half = durations.pressAndRead / 2;
  const withReading = (whole: number): number => Math.max(whole - reading, half);
  switch (step.verb) {
    case 'press':
      return reading > 0 ? withReading(durations.pressAndRead) : half;
    case 'set':
    case 'select':
    case 'move':
    case 'arm':
    case 'engage':
    case 'disengage':
      if (isEntry(step)) return durations.dataEntry;
      return /\baltitude (selector|window)\b|\bselected altitude\b/i.test(step.object)
        ? withReading(durations.setAltitude)
        : durations.lever;
    case 'read':
      return items === null ? half + own : items * durations.challengeResponse;
    case 'check':
      return Math.max(0, durations.challengeResponse - reading);
    default:
      return 0;
  }
}

/** Typing: heads down, into a page. */
export const isEntry = (step: Step): boolean =>
  /^(set|select)$/.test(step.verb) && (step.flags.includes('eyes-down') || /\b(page|route draft)\b/i.test(step.object));

/** Which of the two does what a role does; both for `each`, nobody of the two for the rest. */
function pilotsOf(role: Role | ''): readonly (Pilot | null)[] {
  if (role === 'each') return ['PF', 'PM'];
  if (role === 'PF' || role === 'captain') return ['PF'];
  if (role === 'PM' || role === 'first officer') return ['PM'];
  return [null];
}
