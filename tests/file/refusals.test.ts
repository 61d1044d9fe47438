import { describe, expect, test } from 'vitest';
import type { FileProblem } from '../../lib/file/problem.ts';
import { procedureJsonSchema, readProcedureFile } from '../../lib/file/procedure-file.ts';

const HEAD = 'format: cuewright-procedure/1\nid: pr_a\ntitle: Climb\n';
const STEP = '  - id: st_a\n    who: PM\n    do: {verb: set, object: altitude selector, value: FL 100}\n';

function problems(text: string): readonly FileProblem[] {
  const read = readProcedureFile(text, 'climb.yaml');
  return read.ok ? [] : read.error;
}

describe('files that are no procedure', () => {
  const whole: [string, string, RegExp][] = [
    ['nothing', '', /^climb\.yaml is empty/],
    ['blanks', ' \n\n', /empty/],
    ['a byte order mark alone', '\uFEFF', /empty/],
    ['bytes', 'PK\u0003\u0004\u0000\u0000\uFFFD', /not text/],
    ['bytes decoded badly', 'x\uFFFD\uFFFDx', /not text/],
    ['10 MB', 'a'.repeat(10_000_000), /holds 10\.0 million characters; at most 2 million/],
    ['prose', 'Dear all, please find the climb below.\n...\n', /The file is the text/],
    ['a list', '- a\n...\n', /The file is a list/],
    ['half a line', `${HEAD}steps:\n  - {id: st_a, say: "thrust s`, /Not YAML or JSON/],
    ['half the steps', `${HEAD}steps:\n${STEP}`, /may be half a file/],
    ['a tab', `${HEAD}steps:\n\t- id: st_a\n...\n`, /tab/],
    ['two documents', `${HEAD}steps: []\n---\n${HEAD}steps: []\n...\n`, /second document/],
    ['another format', 'format: cuewright-procedure/9\nid: a\ntitle: b\nsteps: []\n...\n', /can't stand in format/],
    ['no steps', `${HEAD}...\n`, /^steps is missing/],
  ];
  test.each(whole)('%s', (_name, text, message) => {
    expect(problems(text)[0]?.message).toMatch(message);
  });

  test('nesting that would exhaust a reader is answered quickly', () => {
    for (const text of ['['.repeat(1_900_000), '{a: '.repeat(400_000), '- '.repeat(900_000), '? '.repeat(900_000)]) {
      const from = performance.now();
      expect(problems(text).length).toBeGreaterThan(0);
      expect(performance.now() - from).toBeLessThan(5_000);
    }
  });

  test('a file that grows by pointing at itself is refused where it points', () => {
    const bomb = [
      'a: &a [x, x, x]',
      ...'bcdefgh'.split('').map((k, i) => `${k}: &${k} [${`*${'abcdefg'[i]}, `.repeat(9)}]`),
    ];
    const found = problems(`${bomb.join('\n')}\n...\n`);
    expect(found[0]).toMatchObject({ line: 1, column: 7, message: expect.stringContaining('&a marks') });
    expect(found.length).toBeLessThanOrEqual(50);
  });

  test('20 000 fields of one record do not take minutes', () => {
    const text = Array.from({ length: 20_000 }, (_, i) => `k${i}: x`).join('\n');
    const from = performance.now();
    expect(problems(`${text}\n...\n`)[0]?.message).toMatch(/no field "k0"|is missing/);
    expect(performance.now() - from).toBeLessThan(20_000);
  });
});

describe('what is wrong is shown where it is', () => {
  test('a field that nobody knows, with what was meant', () => {
    expect(problems(`${HEAD}steps:\n  - id: st_a\n    sayd: "six"\n...\n`)).toEqual([
      expect.objectContaining({
        line: 6,
        column: 11,
        path: 'steps[0].sayd',
        message: 'There is no field "sayd" here.',
        fix: 'Write say.',
      }),
    ]);
  });

  test('also where the field says nothing', () => {
    expect(
      problems(`${HEAD}steps:\n  - id: st_a\n    sayd:\n    expect: {thrst: null}\n...\n`).map((p) => p.path),
    ).toEqual(['steps[0].expect.thrst', 'steps[0].sayd']);
  });

  test('a verb, a role, a flag that do not exist', () => {
    const text = `${HEAD}steps:\n  - id: st_a\n    who: pilot\n    do: {verb: Set}\n    flags: [criticl]\n...\n`;
    expect(problems(text).map(({ line, path, fix }) => [line, path, fix])).toEqual([
      [6, 'steps[0].who', undefined],
      [7, 'steps[0].do.verb', 'Write set.'],
      [8, 'steps[0].flags[0]', 'Write critical.'],
    ]);
  });

  test('inside the parts that have two shapes', () => {
    const text = `${HEAD}steps:\n  - id: st_a\n    expect: {thrust: CLIMB, vertcal: ASCENT}\n  - id: st_b\n    expect: {armed: {ad: [ALT]}}\n...\n`;
    expect(problems(text).map(({ line, path, fix }) => [line, path, fix])).toEqual([
      [6, 'steps[0].expect.vertcal', 'Write vertical.'],
      [8, 'steps[1].expect.armed.ad', 'Write add.'],
    ]);
  });

  test('an id, a label and a key that stand twice', () => {
    const twice = `${HEAD}steps:\n  - {id: st_a, label: C-01}\n  - {id: st_a, label: C-01}\n...\n`;
    expect(problems(twice).map((p) => [p.line, p.path, p.message])).toEqual([
      [6, 'steps[1].id', 'The id st_a belongs to steps[0] already.'],
      [6, 'steps[1].label', 'The label C-01 belongs to steps[0] already.'],
    ]);
    expect(problems(`${HEAD}title: Descent\nsteps: []\n...\n`)[0]).toMatchObject({
      line: 4,
      path: 'title',
      message: 'title stands here twice.',
    });
  });

  test('a range without units or the wrong way round', () => {
    for (const range of ['46 to 78.6', '78.6 t to 46 t', '46 t - 78.6 t', '']) {
      expect(problems(`${HEAD}envelope: {weight: "${range}"}\nsteps: []\n...\n`)[0]).toMatchObject({
        line: 4,
        path: 'envelope.weight',
        expected: ['46 t to 78.6 t'],
      });
    }
  });

  test('text of one field that is a document', () => {
    const text = `${HEAD}steps:\n  - id: st_a\n    note: "${'a'.repeat(30_000)}"\n...\n`;
    expect(problems(text)[0]).toMatchObject({ line: 6, path: 'steps[0].note', expected: ['at most 20000 characters'] });
  });
});

describe('what is taken', () => {
  test('JSON, a byte order mark, Windows line ends, words that YAML elsewhere turns into something else', () => {
    const json = JSON.stringify({
      format: 'cuewright-procedure/1',
      id: 'pr_a',
      title: 'Climb',
      steps: [{ id: 'st_a', note: null }],
    });
    expect(readProcedureFile(json, 'climb.json')).toMatchObject({
      ok: true,
      value: { steps: [{ id: 'st_a', note: '' }] },
    });
    const windows =
      `\uFEFF${HEAD}steps:\n  - id: st_a\n    do: {verb: engage, value: on}\n    note: 1e3\n...\n`.replaceAll(
        '\n',
        '\r\n',
      );
    expect(readProcedureFile(windows, 'climb.yaml')).toMatchObject({
      ok: true,
      value: { steps: [{ value: 'on', note: '1e3' }] },
    });
  });

  test('the schema for other programs names every field of a step', () => {
    const schema = JSON.stringify(procedureJsonSchema());
    for (const field of ['cue', 'said-by', 'expect-note', 'copied-from', 'if-not', 'cuewright-procedure/1']) {
      expect(schema).toContain(`"${field}"`);
    }
  });
});
