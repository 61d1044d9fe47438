import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { defaultPolicy, readPolicy } from '../../lib/policy/policy.ts';

const seeded: unknown = parse(readFileSync(new URL('../../seed/library/policy.yaml', import.meta.url), 'utf8'));

describe('the operator policy', () => {
  const read = readPolicy(seeded);
  test('of the demo can be read, with the figures of the reference', () => {
    expect(read).toMatchObject({
      ok: true,
      value: {
        operator: 'Skarrowmere Air',
        speeds: {
          selectionMargin: 5,
          selectionMarginTurbulence: 10,
          bandMinimum: 20,
          bankBelowVmm: 15,
          cleanSpeedAddition: 10,
        },
        floors: { takeOff: { speed: 'V2', plus: 10 }, goAroundFirstRetraction: { speed: 'VREF', of: 'left' } },
        gates: { stable: { height: 1000, speedBelow: 5, speedAbove: 10, sink: 1000 }, houseFloor: 400 },
        signOff: { people: 3, answerMonths: 12 },
      },
    });
  });
  test('of a new operator can be read too, and comes back the same', () => {
    expect(readPolicy(defaultPolicy)).toEqual({ ok: true, value: defaultPolicy });
  });
  test('says where a figure is wrong', () => {
    const spoilt = { ...defaultPolicy, speeds: { ...defaultPolicy.speeds, bandMinimum: Number.NaN } };
    const found = readPolicy(spoilt);
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.error).toEqual([{ at: 'speeds.bandMinimum', message: 'a number is expected here' }]);
  });
  test('never lets one person do two things', () => {
    expect(readPolicy({ ...defaultPolicy, signOff: { ...defaultPolicy.signOff, people: 1 } }).ok).toBe(false);
  });
  test('is not read from nothing', () => {
    expect(readPolicy(null)).toMatchObject({
      ok: false,
      error: [{ at: '', message: 'the file is empty: a policy is expected' }],
    });
  });
});
