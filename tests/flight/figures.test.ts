import { expect, test } from 'vitest';
import { figureChanges, figuresOf, rounded } from '../../lib/flight/figures.ts';
import { flyProcedure } from '../../lib/flight/fly.ts';
import { conditionsFor, settingsFor } from '../../lib/flight/start.ts';
import { defaultPolicy } from '../../lib/policy/default.ts';
import { seedProcedure } from '../kit/seed.ts';
import { tn182 } from '../kit/sheets.ts';

const sheet = tn182();
const procedure = seedProcedure('go-around');
const facts = { sheet, policy: defaultPolicy };
const fly = (weight: number) =>
  figuresOf(
    procedure,
    flyProcedure(procedure, facts, conditionsFor(procedure, facts, { weight }), settingsFor(procedure, sheet)),
  );

test('rounded as the screen rounds', () => {
  expect(rounded(1_014.9, 'ft')).toBe(1_010);
  expect(rounded(-15, 'ft')).toBe(-20);
  expect(rounded(2.5, 'kt')).toBe(3);
  expect(Object.is(rounded(-0.4, 's'), 0)).toBe(true);
  expect(rounded(null, 's')).toBe(null);
  expect(rounded(Number.NaN, 's')).toBe(null);
});

test('the same flight gives the same figures, each by a name of its own', () => {
  const figures = fly(58_000);
  expect(fly(58_000)).toEqual(figures);
  expect(new Set(figures.map(({ name }) => name)).size).toBe(figures.length);
  const by = Object.fromEntries(figures.map(({ name, value }) => [name, value]));
  // D6: the smallest margin below the limit of the flap indicated at 58 t is 4 kt, and the study's own rounding leaves 1 kt.
  expect(Math.abs(Number(by['least left below the limit']) - 4)).toBeLessThanOrEqual(1);
  expect(by['GA-05 acts']).toBe(6);
  expect(by['flap F35 to F18 arrives (1)']).toBe(18);
});

test('what differs is told, and nothing else', () => {
  const figures = fly(58_000);
  expect(figureChanges(figures, figures)).toEqual([]);
  const other = figures
    .filter(({ name }) => name !== 'GA-05 acts')
    .map((one) => (one.name === 'length of the flight' ? { ...one, value: 1 } : one));
  expect(figureChanges(figures, other).map(({ name, was, now }) => [name, was?.value, now?.value])).toEqual([
    ['length of the flight', figures[1]!.value, 1],
    ['GA-05 acts', 6, undefined],
  ]);
  expect(figureChanges(other, figures).at(-1)).toMatchObject({ name: 'GA-05 acts', was: null });
});
