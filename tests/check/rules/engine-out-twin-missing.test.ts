import { engineOutTwinMissing } from '../../../lib/check/rules/engine-out-twin-missing.ts';
import type { ProcedureParts, StepParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';
import { houseFacts } from '../../kit/world.ts';

const read: StepParts = { cue: 'then', who: 'PM', verb: 'read', object: 'mode line', flags: ['critical'] };
const gear = (more: StepParts = {}): StepParts => ({
  label: 'GA-08',
  family: 'gear-up',
  cue: 'heard "gear up"',
  who: 'PM',
  verb: 'move',
  object: 'gear lever',
  value: 'UP',
  flags: ['critical'],
  ...more,
});
const normal = (...steps: readonly StepParts[]): ProcedureParts => ({
  title: 'Go-around',
  class: 'normal',
  phases: ['approach', 'go-around'],
  rationale: 'Read, then flap.',
  steps,
});
const engineOut = (...steps: readonly StepParts[]): ProcedureParts => ({
  ...normal(...steps),
  title: 'Engine-out go-around',
  class: 'engine-out',
  rationale: '',
});
const facts = (...others: readonly ProcedureParts[]) => ({ others: told(others) });

testRule(engineOutTwinMissing, {
  valid: [
    { procedure: normal(read), facts: facts(engineOut(read)) },
    { procedure: engineOut(read, gear()), facts: facts(normal(read, gear({ label: 'XX-08' }))) },
    { why: 'no other manoeuvre is asked', procedure: { class: 'normal', phases: ['climb', 'holding'] } },
    { why: 'nor a supplement', procedure: { class: 'supplementary normal', phases: ['approach'] } },
    {
      why: 'a rationale of its own',
      procedure: { ...engineOut(read, gear({ value: 'UP, rudder held' })), rationale: 'Rudder first.' },
      facts: facts(normal(read, gear())),
    },
    {
      why: 'a reason at the step',
      procedure: engineOut(read, gear({ value: 'UP, rudder held', why: 'yaw' })),
      facts: facts(normal(read, gear())),
    },
  ],
  invalid: [
    {
      why: 'nobody wrote it',
      procedure: { class: 'normal', phases: ['take-off', 'climb'] },
      findings: [{ at: ' leavesTo', message: 'missing', says: 'take-off', witness: { kind: 'absent' } }],
    },
    {
      why: 'without the reading of the modes',
      procedure: engineOut(gear()),
      facts: facts(normal(read, gear())),
      findings: [{ at: ' steps', message: 'skeleton', says: 'mode reading', witness: { first: 'Go-around' } }],
    },
    {
      why: 'copied, changed, and not a word about it',
      procedure: { ...engineOut(read, gear({ label: 'EG-08', cue: 'then' })), rationale: 'Read, then flap.' },
      facts: facts(normal(read, gear())),
      findings: [{ at: 'EG-08 why', message: 'unmarked', says: 'in trigger', witness: { second: 'GA-08' } }],
    },
  ],
  missing: [
    {
      procedure: { class: 'normal', phases: ['go-around'], leavesTo: ['engine-out go-around'] },
      facts: { library: houseFacts.library },
      because: 'the engine-out go-around is kept elsewhere',
    },
  ],
});
