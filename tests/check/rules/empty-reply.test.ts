import { emptyReply } from '../../../lib/check/rules/empty-reply.ts';
import { testRule } from '../../kit/rule-tester.ts';

const flaps = { cue: 'heard "flaps"', who: 'PM', verb: 'respond', object: 'flaps' } as const;

testRule(emptyReply, {
  valid: [
    { steps: [{ ...flaps, say: 'twelve, indicating twelve' }] },
    { steps: [{ ...flaps, say: 'speed checked … twelve' }] },
    {
      why: 'the mode line is no configuration',
      procedure: { steps: [{ ...flaps, object: 'mode line', say: 'climb', replyBy: 'PF', reply: 'checked' }] },
    },
    {
      why: 'the value was said in the call',
      procedure: { steps: [{ ...flaps, verb: 'call', say: 'flaps twelve', replyBy: 'PF', reply: 'checked' }] },
    },
  ],
  invalid: [
    {
      procedure: { steps: [{ ...flaps, say: 'Set' }] },
      findings: [{ at: 's1 say', message: 'empty', says: 'flaps', witness: { quote: 'Set' } }],
    },
    {
      procedure: { steps: [{ ...flaps, object: 'gear', verb: 'call', say: '', replyBy: 'PF', reply: 'checked' }] },
      findings: [{ at: 's1 reply', message: 'empty', witness: { quote: 'checked' } }],
    },
    {
      procedure: { steps: [{ ...flaps, say: 'set … checked' }] },
      findings: [{ at: 's1 say', message: 'empty', witness: { quote: 'set … checked' } }],
    },
    {
      procedure: { steps: [{ ...flaps, object: 'altimeters', say: 'set', replyBy: 'PF', reply: 'set' }] },
      findings: [
        { at: 's1 reply', message: 'empty', witness: { field: 'reply' } },
        { at: 's1 say', message: 'empty', witness: { field: 'say' } },
      ],
    },
  ],
});
