// Scenario 7 of the acceptance scenarios: the short wet runway of QAMB and an overweight return at 78.6 t.
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../lib/check/finding.ts';
import { procedureWith } from '../../lib/procedure/build.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { askedOf, ofCheck, stopsOf } from '../kit/asked.ts';
import { heavier, withoutStep, withSteps } from '../kit/mutate.ts';
import { seedProcedure } from '../kit/seed.ts';

const CHECKED = { who: 'PM', checkBy: 'PF', checkSees: 'the same' } as const;

function approach(...detents: readonly string[]): Procedure {
  const base = heavier(seedProcedure('instrument-approach'), 46_000, 78_600);
  const stated = withSteps(
    {
      ...base,
      title: 'Overweight approach and landing at QAMB',
      envelope: { ...base.envelope, detents },
      entry: { ...base.entry, also: `${base.entry.also} Additive up to 20 kt.` },
    },
    'IA-01',
    { ...CHECKED, label: 'IA-91', cue: 'then', verb: 'select', object: 'autobrake selector', value: 'as required' },
    { ...CHECKED, label: 'IA-92', cue: 'then', verb: 'check', object: 'tailwind', value: 'at most 10 kt' },
  );
  return detents.includes('F35') ? stated : withoutStep(withoutStep(stated, 'IA-16'), 'IA-17');
}
const card: Procedure = {
  ...procedureWith({
    title: 'Fleet card',
    steps: [{ cue: 'then', who: 'PM', verb: 'check', object: 'tailwind', value: 'at most 15 kt' }],
  }),
  id: 'pr_card' as Procedure['id'],
};
const messages = (findings: readonly Finding[], check: string) =>
  ofCheck(findings, check).map(({ message, severity }) => `${severity} ${message}`);

describe('F35 at 78.6 t, additive up to 20 kt', () => {
  const { findings } = askedOf(approach('F35'), [card]);
  it('is stopped by the two tail winds, and by nothing else', () => {
    expect(stopsOf(findings)).toEqual(['one-fleet-two-numbers', 'wind-limits-agree']);
    expect(messages(findings, 'wind-limits-agree')).toEqual([
      expect.stringContaining('10 kt here and 15 kt in Fleet card'),
    ]);
    expect(messages(findings, 'one-fleet-two-numbers')).toEqual([
      expect.stringContaining('10 kt here and 15 kt in Fleet card'),
    ]);
  });

  it('161.2 kt against 164 kt, right up to 76.2 t', () => {
    expect(messages(findings, 'additive-busts-flap')).toEqual([
      'ANSWER With F35, VREF and 20 kt are 161.2 kt at 78.6 t against VFE 164 kt: the margin is under 5 kt above 76.2 t.',
    ]);
    const [found] = ofCheck(findings, 'additive-busts-flap');
    // 2.8 kt of 5 kt: short by 2.2 kt.
    expect(found?.witness).toMatchObject({ says: expect.stringContaining('at 78.6 t by 2.2 kt') });
  });

  it('bands too thin: F26 to F35 above 70.2 t, 11.6 kt; F18 to F26 above 76.7 t, 18.1 kt', () => {
    const thin = ofCheck(findings, 'band-too-thin');
    expect(thin.map(({ message }) => message)).toEqual([
      expect.stringContaining('VMM F18 and VFE F26 there are less than 20 kt above 76.7 t'),
      expect.stringContaining('VMM F26 and VFE F35 there are less than 20 kt above 70.2 t'),
    ]);
    expect(thin.map(({ witness }) => witness)).toEqual([
      expect.objectContaining({ says: expect.stringContaining('at 78.6 t by 1.9 kt') }),
      expect.objectContaining({ says: expect.stringContaining('at 78.6 t by 8.4 kt') }),
    ]);
  });

  it('asks for reverse credit and tail wind of the distance, and for what "as required" is', () => {
    expect(messages(findings, 'wet-and-contaminated')).toEqual([
      expect.stringMatching(/^ANSWER .*reverse credit/),
      expect.stringMatching(/^ANSWER .*tail wind limit/),
    ]);
    expect(messages(findings, 'elastic-words')).toEqual([expect.stringMatching(/^ANSWER "as required"/)]);
  });
});

describe('the same with F26', () => {
  const { findings } = askedOf(approach('F26'), [card]);
  it('clears the additive and keeps the band from F18 to F26', () => {
    expect(messages(findings, 'additive-busts-flap')).toEqual([]);
    expect(messages(findings, 'band-too-thin')).toEqual([expect.stringContaining('VMM F18 and VFE F26')]);
  });
});
