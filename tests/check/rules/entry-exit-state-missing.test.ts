import { entryExitStateMissing } from '../../../lib/check/rules/entry-exit-state-missing.ts';
import { testRule } from '../../kit/rule-tester.ts';

testRule(entryExitStateMissing, {
  valid: [
    {},
    { why: 'nothing armed, said explicitly', procedure: { entry: { armed: [] }, exit: { armed: [] } } },
    {
      why: 'one of several',
      procedure: { entry: { flaps: ['F26', 'F35'], autopilot: 'on or off', vertical: ['GLIDE', 'LEVEL'] } },
    },
    {
      why: 'on the ground there is no mode line to promise',
      procedure: { phases: ['preflight'], entry: { vertical: [], armed: null } },
    },
  ],
  invalid: [
    {
      procedure: { exit: { armed: null } },
      findings: [
        { at: ' exit.armed', message: 'exit', says: 'armed modes', witness: { kind: 'absent', field: 'exit.armed' } },
      ],
    },
    {
      procedure: { entry: { flaps: [], speed: '' } },
      findings: [{ at: ' entry.flaps', message: 'entry', says: 'flaps, speed target', witness: { kind: 'absent' } }],
    },
    {
      procedure: { entry: { autopilot: '' }, exit: { selectedAltitude: '', gear: '' } },
      findings: [
        { at: ' entry.autopilot', message: 'entry', witness: { kind: 'absent' } },
        { at: ' exit.gear', message: 'exit', says: 'gear, selected altitude', witness: { kind: 'absent' } },
      ],
    },
  ],
});
