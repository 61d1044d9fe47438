import { oddOneOut } from '../../../lib/check/rules/odd-one-out.ts';
import type { StepParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';

const gear = (more: StepParts = {}): StepParts => ({
  family: 'gear-up',
  cue: 'radio height >= 50 ft',
  orderBy: 'PF',
  orderWords: 'gear up',
  who: 'PM',
  verb: 'move',
  object: 'gear lever',
  value: 'UP',
  expect: { thrust: 'same', vertical: 'DEPART' },
  ...more,
});
const flap = (more: StepParts = {}): StepParts => ({
  family: 'flap-in',
  cue: 'then',
  who: 'PM',
  verb: 'select',
  object: 'flap lever',
  value: 'F6',
  ...more,
});
const others = (...all: readonly (readonly StepParts[])[]) => ({ others: told(all.map((steps) => ({ steps }))) });

testRule(oddOneOut, {
  valid: [
    { procedure: { steps: [gear()] }, facts: others([gear()], [gear()]) },
    { why: 'two of them: no majority', procedure: { steps: [gear({ who: 'PF' })] }, facts: others([gear()]) },
    {
      why: 'nothing said of the modes',
      procedure: { steps: [gear({ expect: { vertical: 'same' } })] },
      facts: others([gear()], [gear()]),
    },
    {
      why: 'a reason',
      procedure: { steps: [gear({ value: 'DOWN', why: 'brakes are hot' })] },
      facts: others([gear()], [gear()]),
    },
    {
      why: 'the other way round, but on a cue of its own',
      procedure: { steps: [flap(), gear()] },
      facts: others([gear(), flap()], [gear(), flap()], [gear(), flap()]),
    },
    {
      why: 'another trigger altogether',
      procedure: { steps: [gear({ cue: 'heard "gear up"' })] },
      facts: others([gear()], [gear()]),
    },
  ],
  invalid: [
    {
      why: 'the figure of the trigger',
      procedure: { steps: [gear({ cue: 'radio height >= 500 ft' })] },
      facts: others([gear()], [gear()], [gear()]),
      findings: [{ at: 's1 cue', message: 'odd', says: '3 of 4', witness: { first: '500', second: '50' } }],
    },
    {
      why: 'actor and value',
      procedure: { steps: [gear({ who: 'PF', value: 'DOWN' })] },
      facts: others([gear()], [gear()]),
      findings: [
        { at: 's1 value', message: 'odd', witness: { first: 'down', second: 'up' } },
        { at: 's1 who', message: 'odd', witness: { first: 'PF', second: 'PM' } },
      ],
    },
    {
      why: 'order and modes',
      procedure: { steps: [gear({ orderWords: 'wheels', expect: { vertical: 'LIFT' } })] },
      facts: others([gear()], [gear()]),
      findings: [
        { at: 's1 expect.vertical', message: 'odd', witness: { second: 'DEPART' } },
        { at: 's1 orderWords', message: 'odd', witness: { second: 'pf gear up' } },
      ],
    },
    {
      why: 'the other way round',
      procedure: { steps: [gear({ label: 'XX-01' }), flap({ label: 'XX-02' })] },
      facts: others([flap(), gear()], [flap(), gear()], [flap(), gear()]),
      findings: [{ at: 'XX-02 family', message: 'sequence', says: 'XX-01', witness: { first: 'XX-02' } }],
    },
  ],
});
