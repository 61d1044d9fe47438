import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { readArguments } from '../../lib/cli/arguments.ts';
import { exitOf } from '../../lib/cli/exit.ts';
import { progress } from '../../lib/cli/progress.ts';
import { cuewright, ROOT } from './command.ts';

describe('what is asked for', () => {
  test('stands anywhere among the files', () => {
    expect(readArguments(['check', '--format=json', 'a.yaml', '--strict', '-', '--sheet', 's', 'a.yaml'])).toEqual({
      ok: true,
      value: {
        ...{ name: 'check', files: ['a.yaml', '-'], sheets: ['s'], policy: null, library: null },
        ...{ format: 'json', strict: true },
      },
    });
    expect(readArguments(['check', '--', '--odd.yaml'])).toMatchObject({ ok: true, value: { files: ['--odd.yaml'] } });
    expect(readArguments(['explain', 'flap', 'STOP'])).toMatchObject({ ok: true, value: { words: ['flap', 'STOP'] } });
    expect(readArguments(['check', '--help'])).toEqual({ ok: true, value: { name: 'help' } });
  });

  test.each([
    [[], 'A command is expected: check, fly, explain or schema.'],
    [['chek', 'a.yaml'], 'There is no command "chek". Did you mean check?'],
    [['check'], 'No procedure is named: give files, or - for standard input.'],
    [['check', '-', '-'], 'Standard input can be read once: one - is enough.'],
    [['check', 'a', '--format', 'xml'], '"xml" is no format: text, json, sarif are.'],
    [['check', 'a', '--polcy', 'b'], 'There is no option --polcy. Did you mean --policy?'],
    [['explain', '--strict'], 'explain takes no options.'],
    [['schema'], 'The schema of what? One of procedure, sheet, library, policy.'],
    [['schema', 'polici'], 'The schema of what? One of procedure, sheet, library, policy. Did you mean policy?'],
  ])('%j is refused with a sentence', (args, error) => {
    expect(readArguments(args)).toEqual({ ok: false, error });
  });

  test('a value that is missing is told', () => {
    expect(readArguments(['check', 'a', '--sheet'])).toMatchObject({
      ok: false,
      error: expect.stringContaining('--sheet'),
    });
  });

  test('the command says so on standard error and ends with 2', () => {
    const { code, out, err } = cuewright(['check', '--formt', 'json']);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('Did you mean --format?');
  });

  test('help names every command and every exit', () => {
    const { code, out } = cuewright(['help']);
    expect(code).toBe(0);
    for (const words of ['check FILES', 'explain ID', 'schema procedure', '--library', '3: with --strict'])
      expect(out).toContain(words);
  });
});

test('of several reasons the gravest is the exit', () => {
  const none = { unreadable: 0, stops: 0, notChecked: 0, strict: false };
  expect(exitOf(none)).toBe(0);
  expect(exitOf({ ...none, notChecked: 4 })).toBe(0);
  expect(exitOf({ ...none, notChecked: 4, strict: true })).toBe(3);
  expect(exitOf({ ...none, notChecked: 4, strict: true, stops: 1 })).toBe(1);
  expect(exitOf({ ...none, stops: 1, unreadable: 1 })).toBe(2);
});

test('a reader that has seen enough is no fault', () => {
  const line = `set -o pipefail; "${process.execPath}" "${path.join(ROOT, 'lib/cli/cuewright.mjs')}" schema sheet | head -n 1`;
  expect(execFileSync('bash', ['-c', line], { encoding: 'utf8' })).toBe('{\n');
});

describe('progress', () => {
  const run = (isTTY: boolean, msEach: number): string[] => {
    const written: string[] = [];
    let clock = 0;
    const shown = progress(100, { isTTY, write: (text) => written.push(text) }, () => clock);
    for (let done = 1; done <= 100; done += 1) {
      clock += msEach;
      shown.at(done);
    }
    shown.end();
    return written;
  };

  test('is shown when it takes long, now and then, and is gone at the end', () => {
    const written = run(true, 100);
    expect(written[0]).toBe('\r10 of 100 procedures checked; Ctrl-C stops');
    expect(written).toHaveLength(47);
    expect(written.at(-1)).toBe('\r\u001B[2K');
  });
  test('is not shown when all is soon done, or where no person looks', () => {
    expect(run(true, 5)).toEqual([]);
    expect(run(false, 100)).toEqual([]);
  });
});
