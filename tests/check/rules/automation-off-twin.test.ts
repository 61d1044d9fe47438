import { automationOffTwin } from '../../../lib/check/rules/automation-off-twin.ts';
import { testRule } from '../../kit/rule-tester.ts';

const press = {
  cue: 'altitude >= 5 000 ft MSL',
  who: 'PF',
  verb: 'press',
  object: 'ASCENT',
  expect: { thrust: 'CLIMB', vertical: 'ASCENT', armed: ['ALT'] },
} as const;
const none = { at: 's1 expect.thrust', message: 'none', says: 'CLIMB', witness: { quote: 'CLIMB' } } as const;

testRule(automationOffTwin, {
  valid: [
    { steps: [{ ...press, note: 'Autothrust off: climb thrust by hand.' }] },
    { steps: [press, { cue: 'then', only: 'hand-flown', who: 'PM', verb: 'press', object: 'LEVEL' }] },
    { steps: [press], effectivity: { type: 'TN-182', standards: [], note: 'not with the autothrust inoperative' } },
    { steps: [{ ...press, expect: { thrust: 'same', vertical: 'ASCENT' } }] },
  ],
  invalid: [
    { procedure: { steps: [press] }, findings: [none] },
    { procedure: { steps: [press, press] }, findings: [none] },
    { procedure: { steps: [{ ...press, note: 'smoothly' }] }, findings: [none] },
  ],
});
