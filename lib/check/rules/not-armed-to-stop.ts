import { lineWords } from '../../mode/layout.ts';
import { unnoticed, unstopped } from '../arming.ts';
import { asked, pathWitness, sayUnasked, standardsWords } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';

export const notArmedToStop = defineRule({
  id: 'not-armed-to-stop',
  number: 81,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Not armed to stop',
  says: 'After every press that climbs or descends the selected altitude is armed, or the step has it read, or a step waits for it to be missing.',
  why: 'Reasonable key sequences lose the capture: "it didn\'t arm". Altitude deviations were reported about once an hour.',
  source: { text: 'NASA study of altitude deviations reported by airline pilots', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'expect', 'checkIfNot'],
  messages: {
    unarmed:
      'After {object} the aircraft can go on in {line} on {standards}: nothing stops it, and nobody is told to see that.',
  },
  examples: {
    bad: '{phases: [climb], entry: {thrust: [GOVERN], vertical: [LEVEL]}, steps: [{cue: event "climb clearance", who: PF, verb: press, object: RATE}]}',
    good: '{phases: [climb], entry: {thrust: [GOVERN], vertical: [LEVEL]}, steps: [{cue: event "climb clearance", who: PF, verb: press, object: RATE, expect: {thrust: GOVERN, lateral: same, vertical: RATE-UP, armed: [ALT]}}]}',
  },
  run({ procedure, flights, unasked, sheet }, report) {
    sayUnasked(flights, unasked);
    const found = asked(flights, (doings, step) => {
      if (step.verb !== 'press') return null;
      for (const doing of doings) {
        const end = unstopped(doing.line, sheet.modes) ? null : unnoticed(doing);
        if (end !== null) return { doing, end };
      }
      return null;
    });
    for (const { step, hits } of found) {
      const { doing, end } = hits[0]!;
      const standards = standardsWords(hits.map((hit) => hit.doing.flight.standard));
      const line = lineWords(doing.flight.composed.graph.lines[end!]!);
      const at = { step: step.id as string, field: 'expect.armed' };
      const data = { object: step.object, line, standards };
      report({ at, message: 'unarmed', data, witness: pathWitness(procedure, hits), read: [line, standards] });
    }
  },
});
