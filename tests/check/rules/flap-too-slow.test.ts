import { expect } from 'vitest';
import { flapTooSlow } from '../../../lib/check/rules/flap-too-slow.ts';
import { testRule } from '../../kit/rule-tester.ts';

const select = (detent: string, cue: string, more: object = {}) =>
  ({ cue, who: 'PM', verb: 'select', object: 'flap lever', value: detent, ...more }) as const;
const goAround = { cue: 'heard "go around"', who: 'PF', verb: 'press', object: 'GO-AROUND switch' } as const;
const looked = { say: 'speed checked … zero' };

testRule(flapTooSlow, {
  valid: [
    { entry: { flaps: ['F6'] }, steps: [select('F0', 'speed >= VMM F0')] },
    {
      why: '180 kt is enough for the light ones',
      procedure: {
        envelope: { weight: { from: 46_000, to: 61_000 } },
        entry: { flaps: ['F6'] },
        steps: [select('F0', 'speed >= 180 kt')],
      },
    },
    {
      why: 'extension is measured by the detent left',
      procedure: { entry: { flaps: ['F6'] }, steps: [select('F12', 'speed <= VFE F12 - 5 kt')] },
    },
    {
      why: 'first retraction of a go-around, bank limited',
      procedure: {
        phases: ['go-around'],
        entry: { flaps: ['F35'] },
        steps: [goAround, select('F18', 'speed >= VREF F35', { note: 'bank 15° at most until VMM F18' })],
      },
    },
    {
      why: 'the look at the speed holds the lever',
      procedure: { entry: { flaps: ['F6'] }, steps: [select('F0', 'flaps F6 indicated', looked)] },
    },
    {
      why: 'on final approach VREF is the floor',
      procedure: {
        phases: ['approach'],
        entry: { flaps: ['F26'] },
        steps: [select('F35', 'speed <= VREF F26 + 5 kt')],
      },
    },
  ],
  invalid: [
    {
      why: 'the sample of the catalogue: true up to 61.1 t',
      procedure: { entry: { flaps: ['F6'] }, steps: [select('F0', 'speed >= 180 kt', looked)] },
      findings: [
        {
          at: 's1 cue',
          message: 'below',
          says: '180 kt is below VMM F0 above 61.1 t',
          witness: {
            kind: 'envelope',
            at: expect.objectContaining({ weight: 78_600 }),
            says: '180 kt is below VMM F0 above 61.1 t; at 78.6 t by 24 kt',
          },
        },
      ],
    },
    {
      why: 'extension below the floor of the detent held',
      procedure: { phases: ['approach'], entry: { flaps: ['F6'] }, steps: [select('F12', 'speed <= 160 kt')] },
      findings: [{ at: 's1 cue', message: 'below', says: 'VMM F6 above 6', witness: { kind: 'envelope' } }],
    },
    {
      why: 'the second retraction of a go-around is measured by VMM again',
      procedure: {
        phases: ['go-around'],
        entry: { flaps: ['F35'] },
        steps: [
          goAround,
          select('F18', 'then', { ...looked, note: 'bank 15° at most' }),
          select('F12', 'speed >= VREF F35 + 10 kt', looked),
        ],
      },
      findings: [{ at: 's3 cue', message: 'below', says: 'VMM F12', witness: { kind: 'envelope' } }],
    },
    {
      why: 'below VMM, and nothing limits the bank',
      procedure: {
        phases: ['go-around'],
        entry: { flaps: ['F35'] },
        steps: [goAround, select('F18', 'speed >= VREF F35')],
      },
      findings: [{ at: 's2 note', message: 'bank', says: '15°', witness: { kind: 'absent', field: 'note' } }],
    },
    {
      why: 'the target flown is too slow for the clean aircraft',
      procedure: { entry: { flaps: ['F6'], speed: '180 kt' }, steps: [select('F0', 'heard "flap zero"')] },
      findings: [{ at: 's1 cue', message: 'below', says: '180 kt', witness: { kind: 'envelope' } }],
    },
  ],
  missing: [
    {
      procedure: { entry: { flaps: ['F6'], speed: '' }, steps: [select('F0', 'heard "flap zero"')] },
      because: 'says no speed',
    },
  ],
});
