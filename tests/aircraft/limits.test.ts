import { describe, expect, test } from 'vitest';
import {
  detentLimit,
  detentsBetween,
  indicatedDuring,
  movementAllowed,
  transitSeconds,
} from '../../lib/aircraft/limits.ts';
import { tn182 } from '../kit/sheets.ts';

const sheet = tn182();

describe('a movement of the flap', () => {
  test('passes the detents between, in its own direction', () => {
    expect(detentsBetween(sheet, 'F35', 'F18')).toEqual(['F35', 'F26', 'F18']);
    expect(detentsBetween(sheet, 'F0', 'F6')).toEqual(['F0', 'F6']);
    expect(detentsBetween(sheet, 'F6', 'F6')).toEqual(['F6']);
    expect(detentsBetween(sheet, 'F6', 'F7')).toBeNull();
  });
  test('takes the time of every stop, the same both ways', () => {
    expect(transitSeconds(sheet, 'F35', 'F18')).toBe(12);
    expect(transitSeconds(sheet, 'F18', 'F35')).toBe(12);
    expect(transitSeconds(sheet, 'F0', 'F6')).toBe(9);
    expect(transitSeconds(sheet, 'F0', 'F99')).toBeNull();
  });
  test('F35 to F18: F26 is indicated after 6 s, F18 after 12 s', () => {
    expect(indicatedDuring(sheet, 'F35', 'F18')).toEqual([
      { from: 0, detent: 'F35' },
      { from: 6, detent: 'F26' },
      { from: 12, detent: 'F18' },
    ]);
  });
  test('one stop is always allowed, two only where it is declared', () => {
    expect(movementAllowed(sheet, 'F35', 'F18', 'go-around')).toBe(true);
    expect(movementAllowed(sheet, 'F35', 'F18', 'approach')).toBe(false);
    expect(movementAllowed(sheet, 'F26', 'F12', 'go-around')).toBe(false);
    expect(movementAllowed(sheet, 'F6', 'F18', 'approach')).toBe(false);
    expect(movementAllowed(sheet, 'F6', 'F12', 'approach')).toBe(true);
    expect(movementAllowed(sheet, 'F6', 'F7', 'approach')).toBe(false);
  });
  test('a detent without VFE has the limit of the aircraft', () => {
    expect(detentLimit(sheet, 'F0')).toBe(345);
    expect(detentLimit(sheet, 'F6')).toBe(235);
    expect(detentLimit(sheet, 'F7')).toBeNull();
  });
});
