import { describe, expect, test } from 'vitest';
import { sourceFiles, sourceOf } from './imports.ts';

const linesOf = (file: string) => sourceOf(file).split('\n').length;

describe('files stay small enough to read', () => {
  const files = sourceFiles('lib', 'app', 'tests', 'e2e', 'seed');
  const sized = files.map((file) => ({ file, lines: linesOf(file) }));
  test('the walk saw them', () => expect(files.length).toBeGreaterThan(200));
  test('none is over 400 lines', () => {
    expect(sized.filter(({ lines }) => lines > 401).map(({ file, lines }) => `${file}: ${lines}`)).toEqual([]);
  });
  test('the median of lib and app is at most 110 lines', () => {
    const lines = sized
      .filter(({ file }) => /^(lib|app)\//.test(file))
      .map(({ lines: count }) => count)
      .sort((a, b) => a - b);
    expect(lines[lines.length >> 1]).toBeLessThanOrEqual(110);
  });
  test('a rule is at most 90 lines, a page at most 40', () => {
    const over = sized.filter(
      ({ file, lines }) =>
        (/^lib\/check\/rules\//.test(file) && !file.endsWith('index.ts') && lines > 91) ||
        (/^app\/.*\/page\.tsx$/.test(file) && lines > 41),
    );
    expect(over.map(({ file, lines }) => `${file}: ${lines}`)).toEqual([]);
  });
  test('names say what is inside', () => {
    const vague = /(^|\/)(utils?|helpers?|common|types|constants|services?|manager)(\.|\/)/i;
    expect(files.filter((file) => vague.test(file))).toEqual([]);
    expect(vague.test('lib/gate/utils.ts')).toBe(true);
  });
});
