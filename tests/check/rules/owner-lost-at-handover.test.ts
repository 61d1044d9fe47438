import { ownerLostAtHandover } from '../../../lib/check/rules/owner-lost-at-handover.ts';
import { testRule } from '../../kit/rule-tester.ts';

const gives = {
  cue: 'event "landing roll"',
  who: 'PF',
  verb: 'call',
  object: 'control',
  say: 'you have control',
} as const;
const over = { ...gives, label: 'X1', replyBy: 'PM', reply: 'I have control' } as const;
const flap = (note: string) =>
  ({ cue: 'then', who: 'PM', verb: 'select', object: 'flap lever', value: 'F18', note }) as const;

testRule(ownerLostAtHandover, {
  valid: [
    { steps: [over] },
    { steps: [flap('PM (captain) selects'), over, flap('PM (first officer) selects')] },
    { steps: [flap('PM (captain) selects'), over, over, flap('PM (captain) selects')] },
    { steps: [flap('PM (captain) selects'), flap('PM (captain) again')] },
  ],
  invalid: [
    { procedure: { steps: [gives] }, findings: [{ at: 's1 reply', message: 'no-reply', witness: { kind: 'absent' } }] },
    {
      procedure: { steps: [{ ...over, reply: 'checked' }] },
      findings: [{ at: 'X1 reply', message: 'no-reply', witness: { quote: 'checked' } }],
    },
    {
      procedure: { steps: [{ ...over, replyBy: 'PF' }] },
      findings: [{ at: 'X1 replyBy', message: 'same-pilot', says: 'PF gives control', witness: { kind: 'order' } }],
    },
    {
      why: 'the captain was PM before and is PF behind',
      procedure: { steps: [flap('PM (captain) selects'), over, flap('by PM (captain)')] },
      findings: [
        { at: 's3 note', message: 'wrong-seat', says: 'the captain is PF', witness: { quote: 'PM (captain)' } },
      ],
    },
  ],
});
