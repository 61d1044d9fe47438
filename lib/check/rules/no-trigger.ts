import { findStep } from '../../procedure/locate.ts';
import { defineRule } from '../rule.ts';
import { absent, wordsOf } from '../witness.ts';

/** Said by the checks of units, references and detents, each in its own words. */
const SAID_ELSEWHERE = new Set([
  'unit-missing',
  'unit-wrong',
  'reference-missing',
  'reference-wrong',
  'detent-missing',
]);

export const noTrigger = defineRule({
  id: 'no-trigger',
  number: 7,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'No trigger',
  says: 'Each step has a condition that starts it; "then" (the step before is done) is one. The condition can be read as gate notation, and the step that it waits for exists.',
  why: 'The start of a step is one of the weak points seen on the line: without a trigger it is done early, late or not at all.',
  source: { text: 'NASA CR 177549 (1990), abstract', seen: true },
  needs: [],
  reads: ['cue'],
  messages: {
    none: 'Nothing says when this step begins: it will be done early, late or not at all.',
    unreadable: 'The cue can not be read, so nothing that depends on it was checked: {problem}.',
    'nothing-before': '"then" waits for the step before, and there is none.',
    'unknown-step': 'The cue waits for {name}, and there is no such step.',
  },
  examples: {
    bad: '[{who: PM, verb: select, object: flap lever, value: F12}]',
    good: '[{cue: speed <= VFE F12 - 5 kt, who: PM, verb: select, object: flap lever, value: F12}]',
  },
  run({ states, procedure }, report) {
    for (const { step, branch, index, gate } of states) {
      const at = { step: step.id, field: 'cue' };
      if (step.cue.trim() === '') {
        report({ at, message: 'none', witness: absent('cue') });
        continue;
      }
      const said = new Set<string>();
      for (const problem of gate.problems) {
        // Five brackets left open are one thing to mend.
        if (SAID_ELSEWHERE.has(problem.code) || said.has(problem.message)) continue;
        said.add(problem.message);
        const { span } = problem;
        const value =
          problem.fix &&
          step.cue.slice(0, problem.fix.span.from) + problem.fix.text + step.cue.slice(problem.fix.span.to);
        report({
          at,
          message: 'unreadable',
          data: { problem: problem.message.replace(/\.$/, '') },
          witness: span.to > span.from ? wordsOf('cue', step.cue, span.from, span.to) : wordsOf('cue', step.cue),
          ...(problem.fix && value ? { fix: { says: problem.fix.says, at, value } } : {}),
        });
      }
      if (gate.gate === null && gate.problems.length === 0) {
        report({
          at,
          message: 'unreadable',
          data: { problem: 'nothing in it is a condition' },
          witness: wordsOf('cue', step.cue),
        });
      }
      // A branch begins when its own condition holds: that is what its first "then" follows.
      const first = branch === null && index === 0;
      const parts = gate.gate?.kind === 'all' ? gate.gate.of : gate.gate === null ? [] : [gate.gate];
      for (const part of parts) {
        if (part.kind === 'then' && first) {
          report({ at, message: 'nothing-before', witness: wordsOf('cue', step.cue, part.span.from, part.span.to) });
        }
        const waited = part.kind === 'after' ? part.step : part.kind === 'within' ? (part.step ?? '') : '';
        if (waited !== '' && findStep(procedure, waited) === null) {
          const witness = wordsOf('cue', step.cue, part.span.from, part.span.to);
          report({ at, message: 'unknown-step', data: { name: waited }, witness });
        }
      }
    }
  },
});
