import { describe, expect, test } from 'vitest';
import { AXES, armingOf, guardsOf, movesOf } from '../../app/(house)/sheets/mode-grid.ts';
import { tn182 } from '../kit/sheets.ts';

const { modes } = tn182();
const rule = (id: string) => modes.rules.find((one) => one.id === id)!;

describe('the mode table by axis', () => {
  test.each(AXES)('moves of %s go between words of that axis, and none stays', (axis) => {
    const moves = movesOf(modes, axis);
    expect(moves.length).toBeGreaterThan(5);
    for (const { from, to } of moves) {
      expect(modes[axis]).toContain(from);
      expect(modes[axis]).toContain(to);
      expect(from).not.toBe(to);
    }
    const keys = moves.map((move) => Object.values(move).join(' '));
    expect(new Set(keys).size).toBe(keys.length);
  });
  const from = (axis: (typeof AXES)[number], event: string) =>
    movesOf(modes, axis)
      .filter((move) => move.event === event)
      .map((move) => `${move.from}>${move.to}`);
  test('a guard keeps words out', () => {
    expect(from('vertical', 'T23')).toEqual(['CAPTURE>LEVEL']);
    expect(from('lateral', 'T05')).toEqual(['CENTRELINE>ROUTE', 'HEADING>ROUTE', 'STRAIGHT>ROUTE']);
  });
  test('several outcomes of one event are several moves', () => {
    expect(from('vertical', 'T24')).toEqual(['CAPTURE>RATE-UP', 'CAPTURE>RATE-DN']);
  });
  test('an outcome by the word it leaves', () => {
    const moves = from('vertical', 'T17');
    expect(moves).toContain('DESCENT>RATE-DN');
    expect(moves).toContain('ASCENT>RATE-UP');
    expect(moves).not.toContain('DESCENT>RATE-UP');
  });
  test('manual thrust is left alone where the table says so, and left by name where it does not', () => {
    expect(from('thrust', 'T15').some((move) => move.startsWith('MANUAL>'))).toBe(false);
    expect(from('thrust', 'T13')).toContain('MANUAL>GOAROUND');
    expect(from('thrust', 'T30')).toEqual(expect.arrayContaining(['MANUAL>CLIMB', 'MANUAL>LATCHED', 'MANUAL>GOVERN']));
  });
});

describe('arming', () => {
  const line = (word: string, at = 0) => armingOf(modes).filter((one) => one.word === word)[at]!;
  test('what arms and what disarms', () => {
    expect(line('GLIDE').arms).toEqual(['T08']);
    expect(line('GLIDE').disarms).toEqual(expect.arrayContaining(['T01', 'T10', 'T32']));
    expect(line('ROUTE')).toMatchObject({ arms: ['T07'], anew: [] });
  });
  test('the armed altitude is decided anew by some events and dropped by others, by standard too', () => {
    expect(line('ALT').anew).toContain('T24');
    expect(line('ALT').disarms).toEqual(expect.arrayContaining(['T21', 'T22', 'T24']));
  });
});

describe('guards in words', () => {
  test('each condition is said', () => {
    expect(guardsOf(rule('T06'))).toEqual(['air · lateral not HEADING · vertical not FLARE']);
    expect(guardsOf(rule('T07'))).toEqual(['lateral not ROUTE · ROUTE not armed']);
    expect(guardsOf(rule('T34'))).toHaveLength(2);
  });
});
