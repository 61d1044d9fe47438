import { speedRestrictionsFight } from '../../../lib/check/rules/speed-restrictions-fight.ts';
import { testRule } from '../../kit/rule-tester.ts';

const still = { elevation: { from: 0, to: 0 }, temperature: { from: 0, to: 0 }, wind: { from: 0, to: 0 } };
const held = (note: string, weight = { from: 46_000, to: 66_800 }) => ({
  phases: ['approach'] as const,
  entry: { flaps: ['F26'], gear: 'down' as const },
  envelope: { detents: ['F35'], weight, ...still },
  steps: [{ cue: 'then', who: 'PF' as const, verb: 'set' as const, object: 'speed selector', value: '160 kt', note }],
});
const step = (cue: string) => ({
  phases: ['approach'] as const,
  steps: [{ cue, who: 'PM' as const, verb: 'select' as const, object: 'flap lever', value: 'F18' }],
});

testRule(speedRestrictionsFight, {
  valid: [
    held('170 kt until 6 NM'),
    held('160 kt to 6 NM'),
    step('speed between VMM F12 and VFE F18 - 5 kt'),
    step('speed >= 150 kt'),
    { why: 'either is enough', procedure: step('speed >= 200 kt or speed <= 150 kt') },
  ],
  invalid: [
    {
      why: '160 kt to 4 NM',
      procedure: held('160 kt to 4 NM'),
      findings: [{ at: 's1 note', message: 'late', says: 'leaves 0.9 NM to the gate', witness: { kind: 'envelope' } }],
    },
    {
      why: 'as it is said on the radio at VAPP 126 kt, 58 t',
      procedure: held('160 kt until 4 NM', { from: 58_000, to: 58_000 }),
      findings: [{ at: 's1 note', message: 'late', witness: { kind: 'envelope' } }],
    },
    {
      why: 'a cue that leaves no speed',
      procedure: step('speed >= 200 kt and speed <= VFE F18 - 5 kt'),
      findings: [
        {
          at: 's1 cue',
          message: 'empty',
          says: 'at every weight there is no such speed',
          witness: { kind: 'envelope' },
        },
      ],
    },
    {
      why: 'none for the heavy aircraft',
      procedure: step('speed between VMM F0 and 190 kt'),
      findings: [{ at: 's1 cue', message: 'empty', says: 'above 68', witness: { kind: 'envelope' } }],
    },
  ],
});
