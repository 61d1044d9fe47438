import { lineWords } from '../../mode/layout.ts';
import { misfits, statesNothing } from '../../mode/truth.ts';
import { asked, type Doing, pathWitness, sayUnasked } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';

/** What may stand there when the step has been done and what follows by itself has followed. */
const shown = ({ flight, ends }: Doing): readonly number[] => [
  ...new Set(ends.flatMap((end) => Array.from(flight.composed.outcomes.settles(end)))),
];

export const wrongWordsExpected = defineRule({
  id: 'wrong-words-expected',
  number: 79,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Wrong words expected',
  says: 'The mode line that a step tells the crew to read can come about: all three axes and what is armed, on every guidance standard that the procedure is for.',
  why: 'An expectation that is never met is not checked any more, and the one time it matters nobody looks.',
  source: { text: 'NASA CR on mode awareness of airline pilots', seen: false },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'expect', 'branch'],
  messages: {
    never:
      'The crew is told to expect other words on the {axis} axis than the machine can show: on {standards} it shows {line}.',
  },
  examples: {
    bad: '{phases: [climb], entry: {thrust: [CLIMB], vertical: [ASCENT], armed: [ALT]}, steps: [{cue: vertical = CAPTURE, who: PM, verb: read, object: mode line, expect: {vertical: LEVEL, armed: [ALT]}}]}',
    good: '{phases: [climb], entry: {thrust: [CLIMB], vertical: [ASCENT], armed: [ALT]}, steps: [{cue: vertical = CAPTURE, who: PM, verb: read, object: mode line, expect: {thrust: GOVERN, vertical: CAPTURE, armed: []}}]}',
  },
  run({ procedure, flights, unasked }, report) {
    sayUnasked(flights, unasked);
    const found = asked(flights, (doings, { expect }) => {
      const [doing] = doings;
      if (doing === undefined || statesNothing(expect)) return null;
      const { lines } = doing.flight.composed.graph;
      const can = doings.some((one) => shown(one).some((end) => misfits(expect, one.line, lines[end]!).length === 0));
      return can ? null : { doing, end: doing.ends[0]! };
    });
    for (const { step, hits } of found) {
      const { doing, end } = hits[0]!;
      const line = doing.flight.composed.graph.lines[end!]!;
      const axis = misfits(step.expect, doing.line, line)[0] ?? 'armed';
      const standards = hits.map((hit) => hit.doing.flight.standard).join(' and ');
      const data = { axis, line: lineWords(line), standards: `standard ${standards}` };
      const at = { step: step.id as string, field: `expect.${axis}` };
      report({ at, message: 'never', data, witness: pathWitness(procedure, hits), read: [data.line, standards] });
    }
  },
});
