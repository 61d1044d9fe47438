import { describe, expect, test } from 'vitest';
import { type BandQuestion, bandAt, bandOver } from '../../lib/envelope/band.ts';
import { domainOf } from '../../lib/envelope/domain.ts';
import { floorPhase } from '../../lib/envelope/floor.ts';
import { defaultPolicy } from '../../lib/policy/policy.ts';
import { otherSheet, tn182 } from '../kit/sheets.ts';

const sheet = tn182();
const domain = domainOf(sheet);
const band = (question: Partial<BandQuestion>) =>
  bandOver(sheet, defaultPolicy, { flaps: ['F18'], phase: 'elsewhere', gear: 'up', ...question }, domain)!;
const at = (question: Partial<BandQuestion>, tonnes: number) => {
  const { low, high, lowName, highName } = bandAt(band(question), { weight: tonnes * 1000 });
  return [Math.round(low), Math.round(high), lowName, highName];
};

// Figures of the oracle's speed table, D4 of the project reference, ±1 kt.
describe('the band of a moment', () => {
  test('between VMM and VFE of the flap indicated', () => {
    expect(at({}, 78.6)).toEqual([160, 195, 'VMM F18', 'VFE F18']);
    expect(at({ flaps: ['F0'] }, 78.6)).toEqual([204, 345, 'VMM F0', 'VMO']);
    expect(at({ flaps: ['F0'], gear: 'down' }, 46)).toEqual([156, 270, 'VMM F0', 'VLE']);
  });
  test('of several flaps that may be there lies inside all of them', () => {
    expect(at({ flaps: ['F6', 'F12'] }, 78.6)).toEqual([174, 210, 'VMM F6', 'VFE F12']);
  });
  test.each([
    ['takeOff', 'F12', 78.6, 157, 'V2 F12 + 10 kt'],
    ['engineOut', 'F12', 78.6, 147, 'V2 F12'],
    ['finalApproach', 'F35', 66.8, 130, 'VREF F35'],
    ['elsewhere', 'F26', 66.8, 141, 'VMM F26'],
  ] as const)('floor %s with %s at %d t: %d kt', (phase, detent, tonnes, kt, name) => {
    const found = bandAt(band({ phase, flaps: [detent] }), { weight: tonnes * 1000 });
    expect(Math.abs(found.low - kt)).toBeLessThan(1);
    expect(found.lowName).toBe(name);
  });
  test('go-around, first retraction: VREF of the detent left, 1.13 VSR of F18 from F35, 1.17 from F26', () => {
    const from = (left: string) => bandAt(band({ phase: 'goAroundFirstRetraction', left }), { weight: 62_000 });
    expect(from('F35')).toMatchObject({ lowName: 'VREF F35', highName: 'VFE F18' });
    expect(from('F35').low / 111.0).toBeCloseTo(1.13, 2);
    expect(from('F26').low / 111.0).toBeCloseTo(1.17, 2);
  });
  test('where a detent has no such speed, VMM holds', () => {
    expect(at({ phase: 'takeOff', flaps: ['F0'] }, 46)[2]).toBe('VMM F0');
    expect(at({ phase: 'finalApproach', flaps: ['F18'] }, 46)[2]).toBe('VMM F18');
  });
  test('over all weights says how far each side moves, and where it is narrowest', () => {
    const { overAll, lowName, highName } = band({ flaps: ['F26'] });
    expect([lowName, highName]).toEqual(['VMM F26', 'VFE F26']);
    expect(overAll?.low.from).toBeCloseTo(116.6, 1);
    expect(overAll?.low.to).toBeCloseTo(152.4, 1);
    expect(overAll?.high).toEqual({ from: 178, to: 178 });
    expect(overAll?.narrowest.at).toEqual({ weight: 78_600 });
    expect(overAll?.narrowest.width).toBeCloseTo(178 - 152.4, 1);
  });
  test('there is none for a detent that the sheet has not', () => {
    expect(bandOver(sheet, defaultPolicy, { flaps: ['F7'], phase: 'elsewhere', gear: 'up' }, domain)).toBeNull();
  });
  test('of a type with tables is drawn the same way', () => {
    const other = otherSheet();
    const found = bandOver(other, defaultPolicy, { flaps: ['HALF'], phase: 'elsewhere', gear: 'up' }, domainOf(other));
    expect(found?.overAll?.low.from).toBeCloseTo(1.3 * 86, 6);
    expect(found?.overAll?.low.to).toBeCloseTo(1.3 * 110, 6);
  });
});

test('which floor holds, from what a step knows', () => {
  expect(floorPhase({ phase: 'take-off' })).toBe('takeOff');
  expect(floorPhase({ phase: 'initial climb', engineOut: true })).toBe('engineOut');
  expect(floorPhase({ phase: 'go-around', engineOut: true, firstGoAroundRetraction: true })).toBe('engineOut');
  expect(floorPhase({ phase: 'go-around', firstGoAroundRetraction: true })).toBe('goAroundFirstRetraction');
  expect(floorPhase({ phase: 'go-around' })).toBe('elsewhere');
  expect(floorPhase({ phase: 'approach' })).toBe('elsewhere');
  expect(floorPhase({ phase: 'approach', final: true })).toBe('finalApproach');
  expect(floorPhase({ phase: 'cruise', engineOut: true })).toBe('elsewhere');
});
