import { callWithoutAnswer } from '../../../lib/check/rules/call-without-answer.ts';
import { testRule } from '../../kit/rule-tester.ts';

const call = { cue: 'speed >= 95 kt', who: 'PM', verb: 'call', object: 'indicated speed', say: 'ninety-five' } as const;

testRule(callWithoutAnswer, {
  valid: [
    { steps: [{ ...call, replyBy: 'PF', reply: 'checked' }] },
    {
      why: 'the answer is an act',
      procedure: { steps: [{ ...call, say: 'V one', replyBy: 'captain', replyAct: 'hand leaves the levers' }] },
    },
    {
      why: 'the next step acts on the words',
      procedure: {
        steps: [
          { ...call, say: 'rotate' },
          { cue: 'heard "rotate"', who: 'PF', verb: 'move', object: 'pitch' },
        ],
      },
    },
    {
      why: 'the radio answers for itself',
      procedure: { steps: [{ ...call, say: '(radio) Skarrowmere one two, going around' }] },
    },
    {
      why: 'the words of the one who acts close an order',
      procedure: {
        steps: [
          {
            cue: 'then',
            orderBy: 'PF',
            orderWords: 'flap six',
            who: 'PM',
            verb: 'select',
            object: 'flap lever',
            value: 'F6',
            say: 'speed checked … six',
          },
        ],
      },
    },
    {
      why: 'an own action announced is no call',
      procedure: { steps: [{ cue: 'then', who: 'PM', verb: 'set', object: 'route page', say: 'QOSTEL drafted' }] },
    },
    {
      why: 'the gate is judged aloud, and the other word is obeyed',
      procedure: {
        steps: [
          {
            cue: 'height <= 1 000 ft AAL',
            who: 'PM',
            verb: 'check',
            object: 'stable gate',
            say: 'one thousand, stable',
            replyBy: 'PF',
            reply: 'checked',
          },
          {
            cue: 'then',
            who: 'PM',
            verb: 'call',
            object: 'gate not met',
            say: 'go around',
            replyBy: 'PF',
            reply: 'going around',
          },
        ],
      },
    },
  ],
  invalid: [
    {
      procedure: { steps: [call] },
      findings: [
        {
          at: 's1 reply',
          message: 'no-reply',
          says: '"ninety-five"',
          witness: { kind: 'text', field: 'say', quote: 'ninety-five' },
        },
      ],
    },
    {
      procedure: { steps: [{ ...call, replyBy: 'PM', reply: 'checked' }] },
      findings: [{ at: 's1 replyBy', message: 'answers-himself', witness: { quote: 'PM' } }],
    },
    {
      procedure: { steps: [{ ...call, replyBy: 'PF' }] },
      findings: [{ at: 's1 reply', message: 'no-words', witness: { kind: 'absent', field: 'reply' } }],
    },
    {
      procedure: { steps: [{ ...call, reply: 'checked' }] },
      findings: [{ at: 's1 replyBy', message: 'nobody-replies', witness: { quote: 'checked' } }],
    },
    {
      procedure: {
        steps: [
          {
            cue: 'then',
            orderBy: 'PF',
            orderWords: 'gear up',
            who: 'PM',
            verb: 'move',
            object: 'gear lever',
            value: 'UP',
          },
        ],
      },
      findings: [{ at: 's1 say', message: 'order-unanswered', witness: { field: 'orderWords', quote: 'gear up' } }],
    },
    {
      procedure: { steps: [{ cue: 'height <= 500 ft AAL', who: 'PF', verb: 'decide', object: 'stable gate' }] },
      findings: [{ at: 's1 say', message: 'gate-in-silence', witness: { kind: 'absent' } }],
    },
    {
      procedure: {
        steps: [
          {
            cue: 'then',
            who: 'PM',
            verb: 'call',
            object: 'approach',
            say: 'go around',
            replyBy: 'PF',
            reply: 'are you sure',
          },
        ],
      },
      findings: [{ at: 's1 reply', message: 'debated', witness: { quote: 'are you sure' } }],
    },
    {
      why: 'the words fall on nobody else',
      procedure: {
        steps: [
          { ...call, say: 'rotate' },
          { cue: 'heard "rotate"', who: 'PM', verb: 'monitor', object: 'pitch' },
        ],
      },
      findings: [{ at: 's1 reply', message: 'no-reply', witness: { quote: 'rotate' } }],
    },
  ],
});
