import { undefinedActorWord } from '../../../lib/check/rules/undefined-actor-word.ts';
import { testRule } from '../../kit/rule-tester.ts';

const step = (more: object) => ({
  steps: [{ cue: 'then', who: 'PM', verb: 'call', object: 'height', ...more } as const],
});

testRule(undefinedActorWord, {
  valid: [
    step({ checkBy: 'PF' }),
    step({ checkBy: 'the other pilot' }),
    step({ value: 'cabin crew and ground crew informed' }),
    step({ value: 'autopilot off' }),
    step({ note: 'both pilots look outside' }),
  ],
  invalid: [
    {
      procedure: step({ checkBy: 'pilot' }),
      findings: [{ at: 's1 checkBy', message: 'vague', witness: { quote: 'pilot' } }],
    },
    {
      procedure: step({ note: 'the handling pilot calls' }),
      findings: [{ at: 's1 note', message: 'vague', says: 'handling pilot', witness: { quote: 'handling pilot' } }],
    },
    {
      procedure: step({ before: [{ kind: 'caution', text: 'The crew looks outside.' }] }),
      findings: [{ at: 's1 before.0', message: 'vague', witness: { quote: 'crew' } }],
    },
  ],
});
