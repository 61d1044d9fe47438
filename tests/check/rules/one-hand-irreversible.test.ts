import { oneHandIrreversible } from '../../../lib/check/rules/one-hand-irreversible.ts';
import { testRule } from '../../kit/rule-tester.ts';

const lever = { cue: 'then', who: 'PM', verb: 'set', object: 'fuel lever', value: 'OFF' } as const;
const ask = { cue: 'then', who: 'PM', verb: 'call', object: 'fuel lever', say: 'confirm number two' } as const;

testRule(oneHandIrreversible, {
  valid: [
    { why: 'asked and confirmed before', procedure: { steps: [{ ...ask, replyBy: 'PF', reply: 'confirm' }, lever] } },
    {
      why: 'in the step itself',
      procedure: { steps: [{ ...lever, say: 'confirm number two', replyBy: 'PF', reply: 'confirmed' }] },
    },
    { why: 'waits for the word', procedure: { steps: [{ ...lever, cue: 'heard "number two confirmed"' }] } },
    {
      why: 'a call is no hand',
      procedure: { steps: [{ ...ask, say: 'V one', object: 'speed', flags: ['irreversible'] }] },
    },
    { why: 'on can be taken back', procedure: { steps: [{ ...lever, value: 'RUN' }] } },
  ],
  invalid: [
    {
      why: 'nobody asks',
      procedure: { steps: [lever] },
      findings: [{ at: 's1 object', message: 'alone', says: 'fuel lever', witness: { kind: 'absent' } }],
    },
    {
      why: 'flagged, whatever its name',
      procedure: { steps: [{ ...lever, object: 'blue guard', value: 'open', flags: ['irreversible'] }] },
      findings: [{ at: 's1 object', message: 'alone', witness: { kind: 'absent' } }],
    },
    {
      why: 'confirmed by the same pilot',
      procedure: { steps: [{ ...ask, replyBy: 'PM', reply: 'confirm' }, lever] },
      findings: [{ at: 's2 object', message: 'himself', says: 'PM', witness: { quote: 'confirm' } }],
    },
    {
      why: 'asked, and nobody answers',
      procedure: { steps: [ask, { ...lever, object: 'fire handle', value: 'pull' }] },
      findings: [{ at: 's2 object', message: 'himself', witness: { quote: 'confirm number two' } }],
    },
  ],
});
