import { expect, test } from 'vitest';
import { fly } from '../../lib/mode/flights.ts';
import { pathWords } from '../../lib/mode/path.ts';
import { GENERAL, having } from '../../lib/mode/properties.ts';
import { AS_WRITTEN, ONE_SLIP } from '../../lib/mode/setting.ts';
import { expectedPath, judgeFlights, sharedMoves } from '../../lib/mode/verdicts.ts';
import { seedProcedure } from '../kit/seed.ts';
import { tn182 } from '../kit/sheets.ts';

const { modes } = tn182();
const climb = seedProcedure('climb-altitude-change');
const glide = having('glide', 'GLIDE is active', { vertical: 'GLIDE' });
const verdict = (explored: ReturnType<typeof judgeFlights>, id: string, standard: string) =>
  explored.verdicts.find((one) => one.id === id && one.standard === standard)!;

test('as written nothing climbs un-armed toward its level; with one slip it does on standard B, and the path says how', () => {
  const written = judgeFlights(fly(modes, climb), climb, [...GENERAL, glide]);
  expect(verdict(written, 'climbing-unarmed-toward', 'A')).toMatchObject({ cases: 0, path: null });
  expect(verdict(written, 'glide', 'B')).toMatchObject({ cases: 0, path: null });
  const slipped = judgeFlights(fly(modes, climb, ONE_SLIP), climb, GENERAL);
  const found = verdict(slipped, 'climbing-unarmed-toward', 'B');
  expect(found.cases).toBeGreaterThan(0);
  expect(pathWords(found.path!)).toMatch(/T24/);
  expect(found.path!.at(-1)!.line).toMatchObject({ vertical: 'RATE-UP', rel: 'above', armed: [] });
  expect(slipped.setting).toContain('any step late');
  expect([slipped.complete, slipped.because]).toEqual([true, []]);
});

test('a surprise is named in the path', () => {
  const setting = { ...AS_WRITTEN, environment: ['dialled in capture'] };
  const explored = judgeFlights(fly(modes, climb, setting), climb, GENERAL);
  const { path } = verdict(explored, 'climbing-unarmed-toward', 'B');
  expect(path!.some((move) => move.does.includes('turned while CAPTURE is active'))).toBe(true);
  expect(explored.setting).toContain('dialled in capture');
});

test('a limit is said beside the verdicts', () => {
  const explored = judgeFlights(fly(modes, climb, ONE_SLIP, 500), climb, GENERAL);
  expect(explored.complete).toBe(false);
  expect(explored.because[0]).toContain('more than 500 states');
});

test('the expected path comes to the end, and a path is compared with it', () => {
  const [flight] = fly(modes, climb).flights;
  const expected = expectedPath(flight!, climb)!;
  expect(expected.at(-1)!.step).not.toBeNull();
  expect(sharedMoves(expected, expected)).toBe(expected.length);
  expect(sharedMoves(expected.slice(0, 3), expected)).toBe(3);
  const other = [...expected.slice(0, 2), { ...expected[2]!, does: 'something else' }];
  expect(sharedMoves(other, expected)).toBe(2);
});
