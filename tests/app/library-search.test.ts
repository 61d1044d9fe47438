import { expect, test } from 'vitest';
import { fits } from '../../app/(house)/library/search.ts';

const entry = ['QHLM', { name: 'Hallowmere', minima: { kind: 'DA', altitude: 240 }, stepDowns: [900], obstacle: null }];

test.each([
  ['', true],
  ['hallow', true],
  ['qhlm 240', true],
  ['900 DA', true],
  ['hallow 5430', false],
  ['null', false],
])('words "%s" fit: %s', (typed, expected) => {
  expect(fits(entry, typed)).toBe(expected);
});
