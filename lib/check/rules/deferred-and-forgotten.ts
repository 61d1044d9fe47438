import { conjuncts, speedBounds } from '../../procedure/cue.ts';
import type { Phase, Step } from '../../procedure/procedure.ts';
import type { StepState } from '../../procedure/walk.ts';
import { configured, confirms, type Last, lastBefore, listReadAt } from '../lists.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const DEFERRED =
  /\b(may|can|might) (be )?(delayed|deferred|postponed|wait|done later)\b|\b(is|are) (deferred|postponed)\b|\bdefer(red)? (until|to)\b|\bdelay(ed)? until\b|\bpostponed? until\b/i;
const FIELDS = [
  'value',
  'object',
  'note',
  'only',
  'expectNote',
  'checkIfNot',
] as const satisfies readonly (keyof Step)[];
const LOOKS = new Set(['check', 'read', 'respond', 'call', 'monitor']);
/** After these nothing is given back. */
const SPEEDS = new Set(['V1', 'VR']);
const ENDS: Readonly<Record<Last, readonly Phase[]>> = {
  'take-off': ['preflight', 'start', 'taxi', 'take-off'],
  landing: ['descent', 'approach', 'landing', 'holding'],
};

export const deferredAndForgotten = defineRule({
  id: 'deferred-and-forgotten',
  number: 15,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Deferred and forgotten',
  says: 'What may be deferred (flap, take-off data, cabin check …) is caught by a later look at it before the point of no return: a step, or an item of the last list before the runway or the landing.',
  why: 'Several take-off and landing accidents began with an act that was put off and never taken up again.',
  source: { text: 'Dismukes and Nowinski, prospective memory', seen: true },
  needs: ['library'],
  reads: ['object', 'value', 'note', 'only', 'expectNote', 'checkIfNot'],
  messages: {
    forgotten: '"{words}": nothing later asks for the {thing} before there is no way back, so nobody will miss it.',
  },
  examples: {
    bad: '{phases: [taxi], steps: [{cue: then, who: PM, verb: select, object: trim wheel, value: "may be delayed in icing"}]}',
    good: '{phases: [taxi], steps: [{cue: then, who: PM, verb: select, object: trim wheel, value: "may be delayed in icing"}, {cue: event "line-up clearance", who: PM, verb: check, object: trim wheel}]}',
  },
  run({ states, library, procedure }, report) {
    for (const [index, { step, branch }] of states.entries()) {
      const field = FIELDS.find((name) => DEFERRED.test(step[name]));
      if (field === undefined) continue;
      const thing = configured(step.object) ?? step.object.toLowerCase().trim();
      const later = states.slice(index + 1).filter((other) => other.branch === branch);
      const end = later.findIndex(noWayBack);
      const inTime = end < 0 ? later : later.slice(0, end);
      const looksAt = (other: Step): boolean =>
        LOOKS.has(other.verb) && thing !== '' && `${other.object} ${other.value}`.toLowerCase().includes(thing);
      const listed = inTime.some(({ step: other }) => {
        const list = listReadAt(other, library);
        return list?.items.some((item) => confirms(item, thing)) === true;
      });
      if (listed || inTime.some(({ step: other }) => looksAt(other))) continue;
      // Where the procedure ends before the runway, the last list of the house catches it.
      const lists = (['take-off', 'landing'] as const)
        .filter((what) => ENDS[what].some((phase) => procedure.phases.includes(phase)))
        .map((what) => lastBefore(what, library));
      if (end < 0 && lists.some((list) => list?.items.some((item) => confirms(item, thing)))) continue;
      const words = DEFERRED.exec(step[field])!;
      const witness = wordsOf(field, step[field], words.index, words.index + words[0].length);
      const data = { words: words[0], thing: thing || 'step' };
      report({ at: { step: step.id, field }, message: 'forgotten', data, witness, read: [inTime.length] });
    }
  },
});

const noWayBack = ({ step, gate }: StepState): boolean =>
  step.flags.includes('irreversible') ||
  speedBounds(conjuncts(gate.gate)).some(({ term }) => term.kind === 'speed' && SPEEDS.has(term.name));
