import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const BRAKE = /\bspeed ?brakes?\b/i;
const HANDS = new Set(['set', 'select', 'move', 'press', 'arm']);
const IN = /\b(stow(ed)?|in|retract(ed)?|arm(ed)?|down|closed|off|zero)\b/i;
const OUT = /\b(out|extend(ed)?|half|full|flight|as needed|on|up|open)\b/i;

export const speedbrakeWithFlap = defineRule({
  id: 'speedbrake-with-flap',
  number: 58,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Speedbrake and flap',
  says: 'A step that puts the speedbrake out is followed by one that stows or arms it, and it is not out while a landing detent is selected or held.',
  why: 'A forgotten speedbrake takes the climb out of a go-around.',
  source: { text: 'handbook practice', seen: false },
  needs: ['sheet'],
  reads: ['verb', 'object', 'value'],
  messages: {
    left: 'The speedbrake goes out here and no later step stows or arms it: it is still out in the go-around.',
    flap: 'The speedbrake is still out when {detent} is held: stow it before the landing flap.',
  },
  examples: {
    bad: '{phases: [descent], steps: [{cue: speed >= 320 kt, who: PF, verb: move, object: speedbrake lever, value: half}]}',
    good: '{phases: [descent], steps: [{cue: speed >= 320 kt, who: PF, verb: move, object: speedbrake lever, value: half}, {cue: speed <= 300 kt, who: PF, verb: move, object: speedbrake lever, value: stowed}]}',
  },
  run({ states, sheet }, report) {
    const landing = new Set(sheet.detents.filter(({ use }) => use.includes('landing')).map(({ name }) => name));
    const moves = states.filter(({ step }) => HANDS.has(step.verb) && BRAKE.test(step.object));
    for (const here of moves) {
      const { step, branch, index } = here;
      if (step.verb === 'arm' || IN.test(step.value) || !OUT.test(step.value)) continue;
      const line = branch?.id ?? '';
      const at = { step: step.id as string, field: 'value' };
      const behind = (other: (typeof states)[number]): boolean =>
        line === (other.branch?.id ?? '') ? other.index > index : line !== '' && other.branch === null;
      const stowed = moves.find((each) => behind(each) && (each.step.verb === 'arm' || IN.test(each.step.value)));
      const witness = wordsOf('value', step.value);
      if (stowed === undefined) report({ at, message: 'left', witness });
      const until = stowed?.branch === branch ? stowed.index : Number.POSITIVE_INFINITY;
      const out = states.filter((each) => each.branch === branch && each.index >= index && each.index < until);
      const held = out.flatMap(({ done }) => (done.flapsKnown ? done.selected : [])).find((name) => landing.has(name));
      if (held !== undefined) report({ at, message: 'flap', data: { detent: held }, witness });
    }
  },
});
