import { twoNamesOneThing } from '../../../lib/check/rules/two-names-one-thing.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { otherSheet } from '../../kit/sheets.ts';

const step = (more: object) => ({
  steps: [{ cue: 'then', who: 'PM', verb: 'set', object: 'altitude selector', ...more } as const],
});

testRule(twoNamesOneThing, {
  valid: [
    step({}),
    step({ object: 'thrust lever' }),
    step({ object: 'DESCENT or ASCENT button' }),
    step({ object: 'seat belt sign switch' }),
    step({ say: 'altitude window set', note: 'PM says "altitude knob"' }),
    { procedure: step({ object: 'flap handle' }), facts: { sheet: otherSheet() } },
  ],
  invalid: [
    {
      procedure: step({ object: 'altitude knob' }),
      findings: [
        {
          at: 's1 object',
          message: 'forbidden',
          witness: { quote: 'altitude knob' },
          fix: 'altitude selector',
        },
      ],
    },
    {
      procedure: step({ object: 'flap handle' }),
      findings: [
        {
          at: 's1 object',
          message: 'other-name',
          says: 'TN-182',
          witness: { quote: 'flap handle' },
          fix: 'flap lever',
        },
      ],
    },
    {
      procedure: step({ object: 'flap lever' }),
      facts: { sheet: otherSheet() },
      why: 'another type, another name',
      findings: [{ at: 's1 object', message: 'other-name', says: 'VQ-48', witness: {}, fix: 'flap handle' }],
    },
    {
      procedure: step({ object: 'heading knob' }),
      why: 'a button and a selector for headings: the knob is the selector',
      findings: [{ at: 's1 object', message: 'other-name', witness: {}, fix: 'heading selector' }],
    },
    {
      procedure: step({ object: 'selector' }),
      findings: [{ at: 's1 object', message: 'which', says: 'speed selector', witness: { quote: 'selector' } }],
    },
    {
      procedure: step({ checkIfNot: 'one notch back', before: [{ kind: 'note', text: 'the speed window shows it' }] }),
      findings: [
        { at: 's1 before.0', message: 'forbidden', witness: { quote: 'speed window' }, fix: null },
        { at: 's1 checkIfNot', message: 'forbidden', witness: { quote: 'notch' }, fix: 'one detent back' },
      ],
    },
  ],
});
