import { unnoticed, unstopped } from '../arming.ts';
import { asked, type Hit, pathWitness, sayUnasked, standardsWords } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';

/** In how many of the ways in which the step is done while the altitude is being captured nothing is armed at its end. */
function share({ doing }: Hit): { readonly lost: number; readonly all: number } {
  const { graph, script } = doing.flight.composed;
  const { first, rule, to, lines } = graph;
  const rules = script.places[doing.place]!.rules ?? [];
  let lost = 0;
  let all = 0;
  for (const state of doing.flight.at[doing.place]!.keys()) {
    if (lines[state]!.vertical !== doing.line.vertical) continue;
    for (let e = first[state]!; e < first[state + 1]!; e += 1) {
      if (!rules.includes(rule[e]!)) continue;
      all += 1;
      if (unstopped(lines[to[e]!]!, graph.machine.modes)) lost += 1;
    }
  }
  return { lost, all };
}

export const knobKillsCapture = defineRule({
  id: 'knob-kills-capture',
  number: 82,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Knob kills capture',
  says: 'No step turns the altitude selector while the selected altitude is being captured, unless the step right behind it brings a climb or descent with the altitude armed.',
  why: 'A new level dialled during the capture dropped it: the aircraft went 800 ft through the level that it was leaving for.',
  source: { text: 'report of a level bust after the altitude was dialled during capture', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'expect', 'checkIfNot'],
  messages: {
    lost: 'Turned in {vertical}, the selector leaves nothing armed in {cases}: the aircraft goes on with nothing to stop it.',
  },
  examples: {
    bad: '{phases: [climb], entry: {thrust: [CLIMB], vertical: [ASCENT], armed: [ALT]}, steps: [{cue: event "climb clearance", who: PF, verb: set, object: altitude selector, value: cleared level}]}',
    good: '{phases: [climb], entry: {thrust: [CLIMB], vertical: [ASCENT], armed: [ALT]}, steps: [{cue: event "climb clearance" and not vertical = CAPTURE, who: PF, verb: set, object: altitude selector, value: cleared level}]}',
  },
  run({ procedure, flights, unasked, sheet }, report) {
    sayUnasked(flights, unasked);
    const found = asked(flights, (doings, step) => {
      if (step.verb === 'press') return null;
      for (const doing of doings) {
        // Captured: the mode that the guidance holds inside the window, and that a turn of the selector leaves.
        const { rel, vertical } = doing.line;
        const captures = rel === 'near' && !sheet.modes.levels?.includes(vertical);
        const end = captures && doing.after.some((line) => line.vertical !== vertical) ? unnoticed(doing) : null;
        if (end !== null) return { doing, end };
      }
      return null;
    });
    for (const { step, hits } of found) {
      const cases = hits.map((hit) => {
        const { lost, all } = share(hit);
        return `${lost} of ${all} cases on ${standardsWords([hit.doing.flight.standard])}`;
      });
      const data = { vertical: hits[0]!.doing.line.vertical, cases: cases.join(', ') };
      const at = { step: step.id as string, field: 'object' };
      report({ at, message: 'lost', data, witness: pathWitness(procedure, hits), read: cases });
    }
  },
});
