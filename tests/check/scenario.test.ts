// Scenario 1 of the acceptance scenarios: a data revision lowers the limit of F6 from 235 kt to 220 kt.
import { describe, expect, it } from 'vitest';
import { checkProcedure } from '../../lib/check/check.ts';
import type { Finding } from '../../lib/check/finding.ts';
import { byCause, healedAndBroken } from '../../lib/check/group.ts';
import { type ProcedureParts, procedureWith } from '../../lib/procedure/build.ts';
import type { Phase } from '../../lib/procedure/procedure.ts';
import { housePolicy, tn182, withLimits } from '../kit/world.ts';

const revisionB = withLimits({ F6: 220 });
const flapSix = (kt: number) =>
  ({ cue: `speed <= ${kt} kt`, who: 'PM', verb: 'select', object: 'flap lever', value: 'F6' }) as const;
/** Five steps in take-off, approach, go-around, hold and the supplement of a high aerodrome. */
const FIVE: readonly (readonly [Phase, number, ProcedureParts])[] = [
  ['take-off', 230, { entry: { flaps: ['F0'] } }],
  ['approach', 230, {}],
  ['go-around', 225, {}],
  ['holding', 225, { envelope: { level: { from: 6_000, to: 22_000 } } }],
  ['approach', 230, { title: 'QSTR supplement' }],
];
const findings = (kt: number | null, sheet = revisionB): readonly Finding[] =>
  FIVE.flatMap(([phase, below, parts]) => {
    const procedure = procedureWith({ ...parts, phases: [phase], steps: [flapSix(kt ?? below)] });
    return checkProcedure(procedure, { sheet, policy: housePolicy }).findings;
  });
const of = (all: readonly Finding[], check: string): readonly Finding[] => all.filter((each) => each.check === check);

describe('a data revision lowers a flap limit', () => {
  it('was right before', () => expect(of(findings(null, tn182), 'flap-above-limit')).toEqual([]));

  it('stops five steps at all weights, as one cause', () => {
    const stops = of(findings(null), 'flap-above-limit');
    expect(stops).toHaveLength(5);
    expect(byCause(stops)).toHaveLength(1);
    for (const stop of stops) expect(stop.message).toContain('is above VFE F6 - 5 kt at every weight');
  });

  it('asks about the band above 75.4 t, 15.8 kt at 78.6 t', () => {
    const thin = of(findings(null), 'band-too-thin');
    expect(thin.length).toBeGreaterThan(0);
    expect(thin[0]!.message).toContain('above 75.4 t');
    // 15.8 kt of 20 kt: short by 4.2 kt.
    expect(thin[0]!.witness).toMatchObject({ says: expect.stringContaining('at 78.6 t by 4.2 kt') });
  });

  it('is healed by "below 210" but for the hold at FL 220', () => {
    const { healed, broken } = healedAndBroken(findings(null), findings(210));
    expect(of(healed, 'flap-above-limit')).toHaveLength(5);
    expect(broken).toEqual([]);
    expect(of(findings(210), 'flap-above-limit')).toEqual([]);
    expect(of(findings(210), 'flap-too-high').map((each) => each.message)).toEqual([
      'F6 is selected at any altitude up to 22 000 ft; the limit for flap is 20 000 ft.',
    ]);
  });
});
