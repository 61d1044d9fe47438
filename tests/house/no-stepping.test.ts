import { describe, expect, test } from 'vitest';
import { sourceFiles, sourceOf } from './imports.ts';

/** What gives one figure at one point. Whoever asks for it again and again is sampling, and misses the middle. */
const AT_ONE_POINT =
  /\b(speedAt|bandAt|evaluate|interpolate)\b[^;]*?from\s+['"][^'"]*\/(schedule|band|expression)\.ts['"]/;
/** A loop that adds to a weight, a wind, a temperature or an elevation. */
const STEPPING = /\b(weight|wind|temperature|elevation|tonnes)\s*(\+=|-=|=\s*\w+\s*\+\s*\w+)/;
const sampling = (source: string): boolean => AT_ONE_POINT.test(source) || STEPPING.test(source);

describe('no check steps through weights by itself: it asks for a proof', () => {
  const files = sourceFiles('lib/check', 'lib/procedure');
  test('the walk saw them', () => expect(files.length).toBeGreaterThan(30));
  test('none does', () => {
    expect(
      files
        .filter((file) => sampling(sourceOf(file)))
        .map((file) => `${file}: use prove() or extentOf() of lib/envelope`),
    ).toEqual([]);
  });
  test('one that did would be seen', () => {
    expect(sampling("import { speedAt } from '../../aircraft/schedule.ts';")).toBe(true);
    expect(sampling("import {\n  evaluate,\n} from '../../base/expression.ts';")).toBe(true);
    expect(sampling('for (let weight = 46_000; weight <= 78_600; weight += 1_000) ask(weight);')).toBe(true);
    expect(sampling("import { speedExpression } from '../../aircraft/schedule.ts';")).toBe(false);
  });
});
