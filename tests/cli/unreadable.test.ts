import path from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Report } from '../../lib/cli/report.ts';
import { seedText } from '../kit/seed.ts';
import { changed, cuewright, folderWith, lineOf, reported } from './command.ts';

const good = seedText('procedures/direct-to.yaml');
const sheet = seedText('aircraft/tn-182-a.yaml');
const misspelt = changed(good, 'verb: call', 'verb: cal');

const BAD: Readonly<Record<string, { content: string | Uint8Array; problem: Record<string, unknown> }>> = {
  'binary.yaml': {
    content: Uint8Array.from({ length: 4_000 }, (_, index) => (index * 37) % 256),
    problem: { message: expect.stringContaining('not text'), expected: ['text in UTF-8'] },
  },
  'latin.yaml': {
    content: Buffer.from('format: cuewright-procedure/1\nid: pr_1\ntitle: M\u00f6we\n', 'latin1'),
    problem: { line: 3, column: 9, message: expect.stringContaining('not text from here on') },
  },
  'zeros.yaml': { content: new Uint8Array(3_000), problem: { message: expect.stringContaining('is not text') } },
  'empty.yaml': { content: '', problem: { line: 1, column: 1, message: expect.stringContaining('is empty') } },
  'half.yaml': {
    content: good.slice(0, good.lastIndexOf('\n  - id:') + 1),
    problem: { message: expect.stringContaining('may be half a file'), expected: ['...'] },
  },
  'large.yaml': {
    content: `title: ${'x'.repeat(10_000_000)}\n`,
    problem: { message: expect.stringContaining('more than 6 MB'), expected: ['at most 2 million characters'] },
  },
  'long.yaml': {
    content: `title: ${'x'.repeat(3_000_000)}\n`,
    problem: { message: expect.stringContaining('3.0 million') },
  },
  'misspelt.yaml': {
    content: misspelt,
    problem: {
      line: lineOf(misspelt, 'verb: cal'),
      column: 17,
      path: 'steps[0].do.verb',
      expected: expect.arrayContaining(['call', 'set']),
      fix: 'Write call.',
    },
  },
  'tabs.yaml': {
    content: 'format: cuewright-procedure/1\nid:\n\tx: 1\n',
    problem: { line: 3, message: expect.stringContaining('tab') },
  },
  'sheet.yaml': { content: sheet, problem: { message: expect.any(String) } },
};

test('every bad file is told with its place; the good one among them is checked all the same', () => {
  const files = Object.fromEntries(Object.entries(BAD).map(([name, { content }]) => [name, content]));
  const folder = folderWith({ ...files, 'good.yaml': good, 'nothing/in-here.txt': '' });
  const names = [...Object.keys(BAD), 'good.yaml', 'missing.yaml', 'good.yaml/inside.yaml', 'nothing'];
  const report = reported(names, '', folder);
  expect(report.exit).toBe(2);
  expect(report.procedures.map(({ file }) => file)).toEqual(['good.yaml']);
  const told = Object.fromEntries(report.unreadable.map(({ file, problems }) => [file, problems[0]]));
  for (const [name, { problem }] of Object.entries(BAD)) expect(told[name], name).toMatchObject(problem);
  expect(told['missing.yaml']).toMatchObject({ message: 'There is no such file.' });
  expect(told['good.yaml/inside.yaml']).toMatchObject({ message: 'There is no such file.' });
  expect(told.nothing).toMatchObject({ message: expect.stringContaining('holds no .yaml') });
  expect(report.totals).toMatchObject({ procedures: 1, unreadable: names.length - 1 });
});

test('a person reads file, line, column, what is wrong and what may stand there', () => {
  const folder = folderWith({ 'misspelt.yaml': misspelt });
  const { code, out } = cuewright(['check', 'misspelt.yaml'], '', folder);
  expect(code).toBe(2);
  expect(out).toContain(`misspelt.yaml:${lineOf(misspelt, 'verb: cal')}:17 can't be read: "cal" can't stand in`);
  expect(out).toMatch(/Expected: set, select.* Write call\./);
  expect(out).toContain('0 procedures: 0 STOP, 0 ANSWER, 0 ADVICE, 1 file could not be read');
});

test('what comes by standard input is told as such', () => {
  const { code, out } = cuewright(['check', '-'], new Uint8Array([0, 159, 146, 150]));
  expect(code).toBe(2);
  expect(out).toMatch(/^standard input:1:\d can't be read: standard input is not text/m);
  expect(cuewright(['check', '-'], '').out).toContain('standard input is empty');
});

test('a STOP elsewhere does not hide that a file could not be read, nor the other way round', () => {
  const stop = seedText('procedures/engine-out-take-off.yaml').replace('speed >= VMM F12 and', 'speed >= 90 kt and');
  const report = reported(['-', 'missing.yaml'], stop);
  expect(report.exit).toBe(2);
  expect(report.totals.STOP).toBeGreaterThan(0);
});

describe('what procedures are checked against', () => {
  const ask = (files: Readonly<Record<string, string | Uint8Array>>, ...args: string[]): Report =>
    reported(['-', ...args], good, folderWith(files));
  const nothing = { exit: 2, against: null, procedures: [] };

  test('a broken sheet is told with its line, and nothing is checked', () => {
    const broken = changed(sheet, 'vmo: { value: 345', 'vmo: { value: fast');
    const report = ask({ 'sheet.yaml': broken }, '--sheet', 'sheet.yaml');
    expect(report).toMatchObject(nothing);
    expect(report.unreadable).toMatchObject([
      { file: 'sheet.yaml', problems: [{ line: lineOf(broken, 'value: fast'), path: 'limits.vmo.value' }] },
    ]);
    const said = cuewright(['check', '-', '--sheet', 'missing.yaml'], good);
    expect([said.code, said.out]).toEqual([2, expect.stringContaining('Nothing was checked')]);
  });

  test('half a sheet, an empty and a binary one', () => {
    for (const content of [sheet.slice(0, sheet.length / 2), '', new Uint8Array([1, 0, 255, 254])]) {
      const report = ask({ 'sheet.yaml': content }, '--sheet', 'sheet.yaml');
      expect(report).toMatchObject(nothing);
      expect(report.unreadable[0]!.problems[0]!.message.length).toBeGreaterThan(10);
    }
  });

  test('a policy with a wrong value, and one that is no YAML', () => {
    const wrong = changed(seedText('library/policy.yaml'), 'bandMinimum: 20', 'bandMinimum: wide');
    const report = ask({ 'policy.yaml': wrong }, '--policy', 'policy.yaml');
    expect(report).toMatchObject(nothing);
    expect(report.unreadable).toMatchObject([
      {
        file: 'policy.yaml',
        problems: [
          {
            line: lineOf(wrong, 'bandMinimum'),
            column: 16,
            path: 'speeds.bandMinimum',
            message: 'a number is expected here.',
          },
        ],
      },
    ]);
    const open = ask({ 'policy.yaml': 'format: 1\nspeeds: { a: [1\n' }, '--policy', 'policy.yaml');
    expect(open.unreadable[0]!.problems[0]).toMatchObject({ line: 3, message: expect.stringContaining('Not YAML') });
    expect(ask({ 'policy.yaml': '' }, '--policy', 'policy.yaml')).toMatchObject(nothing);
  });

  test('a library with one wrong file, and one that is not there; both are told', () => {
    const wrong = changed(seedText('library/terms.yaml'), 'meaning:', 'meanings:');
    const report = ask({ 'lib/terms.yaml': wrong }, '--library', 'lib', '--sheet', 'none.yaml');
    expect(report.unreadable.map(({ file }) => file)).toEqual(['none.yaml', path.join('lib', 'terms.yaml')]);
    expect(report.unreadable[1]!.problems.map(({ line }) => line)).toContain(lineOf(wrong, 'meanings:'));
    expect(ask({}, '--library', 'nowhere')).toMatchObject(nothing);
  });
});
