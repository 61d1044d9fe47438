import { expect } from 'vitest';
import { targetOutsideBand } from '../../../lib/check/rules/target-outside-band.ts';
import { testRule } from '../../kit/rule-tester.ts';

const target = (value: string, more: object = {}) =>
  ({ cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value, ...more }) as const;
const select = (detent: string, cue: string) =>
  ({ cue, who: 'PM', verb: 'select', object: 'flap lever', value: detent }) as const;

testRule(targetOutsideBand, {
  valid: [
    {
      why: 'the margin of VAPP is asked of the additive: 161.2 kt stays under VFE F35 itself',
      procedure: {
        phases: ['landing'],
        envelope: { detents: ['F35'] },
        entry: { flaps: ['F35'], gear: 'down' },
        steps: [{ cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value: 'VAPP' }],
      },
    },
    { phases: ['approach'], entry: { flaps: ['F18'] }, steps: [target('180 kt')] },
    { steps: [target('clean speed')] },
    { steps: [target('250 kt or as cleared')] },
    {
      why: 'the flap follows on its own cues',
      procedure: {
        phases: ['climb'],
        entry: { flaps: ['F12'] },
        steps: [
          target('clean speed'),
          select('F6', 'speed >= VMM F6 and flaps F12 indicated'),
          select('F0', 'speed >= VMM F0 and flaps F6 indicated'),
        ],
      },
    },
    {
      why: 'the step looks at the limit of the flap',
      procedure: {
        entry: { flaps: ['F18'] },
        steps: [target('clean speed', { checkSees: 'figure at most VFE of the detent indicated - 5 kt' })],
      },
    },
    {
      why: 'take-off may be below VMM',
      procedure: { phases: ['take-off'], entry: { flaps: ['F12'] }, steps: [target('V2 + 15 kt')] },
    },
    {
      why: 'final approach',
      procedure: {
        phases: ['approach'],
        entry: { flaps: ['F35'], gear: 'down' },
        envelope: { weight: { from: 46_000, to: 66_800 } },
        steps: [target('VREF F35 + 5 kt')],
      },
    },
    { why: 'nothing says what the flap is', procedure: { entry: { flaps: [] }, steps: [target('330 kt')] } },
  ],
  invalid: [
    {
      why: 'a step that may be left out is asked all the same',
      procedure: { steps: [target('342 kt', { only: 'controller wants it' })] },
      findings: [{ at: 's1 value', message: 'high', says: 'VMO', witness: { kind: 'envelope' } }],
    },
    {
      why: 'the look at the flap guards the flap alone',
      procedure: {
        entry: { flaps: ['F18'] },
        steps: [target('342 kt', { checkSees: 'figure at most VFE of the detent indicated - 5 kt' })],
      },
      findings: [{ at: 's1 value', message: 'high', says: 'VMO', witness: { kind: 'envelope' } }],
    },
    {
      why: 'the sample of the catalogue',
      procedure: { phases: ['approach'], entry: { flaps: ['F18'] }, steps: [target('200 kt')] },
      findings: [
        {
          at: 's1 value',
          message: 'high',
          says: '200 kt is above VFE F18 - 5 kt at every weight',
          witness: { kind: 'envelope' },
        },
      ],
    },
    {
      procedure: { steps: [target('200 kt')] },
      findings: [
        {
          at: 's1 value',
          message: 'low',
          says: '200 kt is below VMM F0 above 75',
          witness: { at: expect.objectContaining({ weight: 78_600 }), says: expect.stringContaining('at 78.6 t by 4') },
        },
      ],
    },
    {
      why: 'the flap does not follow',
      procedure: {
        phases: ['climb'],
        entry: { flaps: ['F12'] },
        steps: [target('clean speed'), select('F6', 'heard "flap six"')],
      },
      findings: [{ at: 's1 value', message: 'high', says: 'VFE F12 - 5 kt', witness: { kind: 'envelope' } }],
    },
    {
      procedure: { entry: { gear: 'down' }, steps: [target('280 kt')] },
      findings: [{ at: 's1 value', message: 'high', says: 'VLE - 5 kt', witness: { kind: 'envelope' } }],
    },
    {
      procedure: { steps: [target('342 kt')] },
      findings: [{ at: 's1 value', message: 'high', says: 'VMO', witness: { kind: 'envelope' } }],
    },
    {
      why: 'a flap in transit holds its limit',
      procedure: {
        phases: ['approach'],
        entry: { flaps: ['F6'] },
        steps: [select('F12', 'speed <= 200 kt'), target('208 kt')],
      },
      findings: [{ at: 's2 value', message: 'high', says: 'with F6 or F12 held', witness: { kind: 'envelope' } }],
    },
  ],
  missing: [{ procedure: { steps: [target('the usual')] }, because: '"the usual" has no value' }],
});
