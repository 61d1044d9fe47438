import { invisibleTrigger } from '../../../lib/check/rules/invisible-trigger.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { otherSheet } from '../../kit/sheets.ts';

const on = (cue: string, who: 'PM' | 'cabin crew' | 'ground crew' = 'PM') => ({
  steps: [{ cue, who, verb: 'call', object: 'state', say: 'seen' } as const],
});

testRule(invisibleTrigger, {
  valid: [
    on('event "flap indication moves"'),
    on('event "engine failure indicated"'),
    on('event "clearance read back"'),
    on('event "QIMRAN passed" and flaps F6 indicated'),
    on('judged "flaps will be late"'),
    on('event "final approach fix passed"', 'cabin crew'),
    on('event "engines shut down, warning light out"', 'ground crew'),
  ],
  invalid: [
    {
      why: 'nobody sees flaps move',
      procedure: on('speed <= 200 kt and event "flaps start to move"'),
      findings: [
        { at: 's1 cue', message: 'unseen', says: 'flap indication', witness: { quote: 'flaps start to move' } },
      ],
    },
    {
      why: 'the type has no light for a valve',
      procedure: on('event "bleed valve light out"'),
      findings: [
        { at: 's1 cue', message: 'no-indication', says: 'TN-182', witness: { quote: 'bleed valve light out' } },
      ],
    },
    {
      why: 'a type that shows no spoilers',
      procedure: on('event "spoiler indication moves"'),
      facts: { sheet: otherSheet() },
      findings: [{ at: 's1 cue', message: 'no-indication', says: 'VQ-48', witness: { kind: 'text' } }],
    },
    {
      why: 'the cabin sees no airspeed',
      procedure: on('speed <= 160 kt', 'cabin crew'),
      findings: [{ at: 's1 cue', message: 'outside', says: 'cabin crew', witness: { quote: 'speed <= 160 kt' } }],
    },
  ],
});
