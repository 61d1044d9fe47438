import { effectivityHoleOrOverlap } from '../../../lib/check/rules/effectivity-hole-or-overlap.ts';
import type { Fleet } from '../../../lib/library/library.ts';
import type { ProcedureParts } from '../../../lib/procedure/build.ts';
import { testRule, told } from '../../kit/rule-tester.ts';
import { houseFacts } from '../../kit/world.ts';

const house = houseFacts.fleet!;
const tails = (...all: readonly (readonly [string, string, string, string | null])[]): { readonly fleet: Fleet } => ({
  fleet: {
    ...house,
    tails: [...new Set(all.map(([tail]) => tail))].map((registration) => ({
      registration,
      type: 'TN-182',
      options: all
        .filter(([tail]) => tail === registration)
        .map(([, value, from, until]) => ({ option: 'standard' as const, value: value as 'A' | 'B', from, until })),
    })),
  },
});
const text = (title: string, ...standards: readonly string[]): ProcedureParts => ({
  title,
  effectivity: { type: 'TN-182', standards, note: '' },
});
const at = ' effectivity.standards';

testRule(effectivityHoleOrOverlap, {
  valid: [
    text('Climb', 'A', 'B'),
    text('Climb'),
    { procedure: text('Climb, standard A', 'A'), facts: { others: told([text('Climb, standard B', 'B')]) } },
    {
      why: 'what was is past',
      procedure: text('Climb', 'B'),
      facts: tails(['Q-SKG', 'A', '2023-03-01', '2025-02-10'], ['Q-SKG', 'B', '2025-02-10', null]),
    },
    {
      why: 'a step for each standard',
      procedure: {
        steps: [
          { family: 'arm', only: 'standard A' },
          { family: 'arm', only: 'standard B' },
          { family: 'other', only: 'standard A' },
        ],
      },
    },
    {
      why: 'another type',
      procedure: { ...text('Climb', 'A'), effectivity: { type: 'VQ-48', standards: ['A'], note: '' } },
    },
  ],
  invalid: [
    {
      why: 'one tail gets standard B',
      procedure: text('Climb', 'A'),
      facts: tails(
        ['Q-SKE', 'A', '2022-05-30', null],
        ['Q-SKF', 'A', '2022-11-07', '2027-02-01'],
        ['Q-SKF', 'B', '2027-02-01', null],
      ),
      findings: [{ at, message: 'hole', says: 'Q-SKF from 2027-02-01', witness: { first: 'A', second: 'B' } }],
    },
    {
      why: 'the demo fleet',
      procedure: text('Climb', 'A'),
      findings: [{ at, message: 'hole', says: 'Q-SKG, Q-SKH, Q-SKI:', witness: { second: 'B' } }],
    },
    {
      why: 'two texts for standard B',
      procedure: text('Climb', 'A', 'B'),
      facts: { others: told([text('Climb (standard B)', 'B')]) },
      findings: [{ at, message: 'overlap', says: 'standard B', witness: { second: 'Climb (standard B)' } }],
    },
    {
      why: 'steps that stand in for each other leave one standard out, or meet',
      procedure: {
        steps: [
          { label: 'XX-01', family: 'arm', only: 'standard A' },
          { label: 'XX-02', family: 'arm', only: 'standard A, tail wind' },
        ],
      },
      findings: [
        { at: 'XX-01 only', message: 'step-overlap', says: 'XX-02', witness: { first: 'XX-01', second: 'XX-02' } },
        { at: 'XX-01 only', message: 'step-hole', says: 'standard B', witness: { first: 'A', second: 'B' } },
      ],
    },
  ],
});
