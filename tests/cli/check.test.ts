import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { rules } from '../../lib/check/rules/index.ts';
import { rulesUpTo } from '../../lib/check/stage.ts';
import { procedureNames, seedText } from '../kit/seed.ts';
import { changed, cuewright, folderWith, lineOf, reported } from './command.ts';

const takeOff = seedText('procedures/engine-out-take-off.yaml');
/** Retracting far below the lowest speed of the detent. */
const planted = changed(takeOff, 'cue: speed >= VMM F12 and', 'cue: speed >= 90 kt and');
const clean = seedText('procedures/direct-to.yaml');

describe('the procedures of the demo operator', () => {
  test('have no STOP: exit 0, told with what was checked against what, and never as safe', () => {
    const { code, out, err } = cuewright(['check', 'seed/procedures']);
    expect([code, err]).toEqual([0, '']);
    const [first, ...rest] = out.split('\n');
    expect(first).toBe(
      'checked against sheet TN-182 revision A (seed/aircraft/tn-182-a.yaml), policy 1 of Skarrowmere Air (seed/library/policy.yaml)',
    );
    expect(out.match(/^ {2}checked for \d+ properties over \d\d\.\d t to /gm)).toHaveLength(procedureNames().length);
    expect(rest.at(-2)).toMatch(/^8 procedures: 0 STOP, 0 ANSWER, \d+ ADVICE, \d+ not checked$/);
    expect(out).not.toMatch(/\bsafe/i);
  });

  test('what was not checked is told with its reason, and ends with 3 when asked strictly', () => {
    const file = 'seed/procedures/go-around.yaml';
    const { code, out } = cuewright(['check', file, '--strict']);
    const line = lineOf(seedText('procedures/go-around.yaml'), '- { when: event "ground spoilers in"');
    expect(out).toContain('not checked, because conditions in words can not be compared');
    expect(out).toContain(`branch-gap-or-overlap at GA-00 (${line}:`);
    expect(code).toBe(3);
    expect(cuewright(['check', file]).code).toBe(0);
  });
});

describe('a STOP', () => {
  test('ends with 1, even strictly, and points at its line in the file', () => {
    const folder = folderWith({ 'engine-out.yaml': planted });
    const { code, out } = cuewright(['check', 'engine-out.yaml', '--strict'], '', folder);
    expect(code).toBe(1);
    const line = lineOf(planted, 'cue: speed >= 90 kt and');
    expect(out).toMatch(new RegExp(`STOP · ${line}:10 · EO-\\d\\d · flap-too-slow\n {4}\\S.*\n {4}\\S`));
    expect(out).toMatch(/^1 procedure: [1-9]\d* STOP/m);
  });

  test('has in JSON the step, the field, and a witness with a weight', () => {
    const report = reported(['-'], planted);
    expect(report.exit).toBe(1);
    const found = report.procedures[0]!.findings.find((finding) => finding.check === 'flap-too-slow')!;
    const rule = rules.find(({ id }) => id === 'flap-too-slow')!;
    expect(found).toMatchObject({ number: rule.number, severity: 'STOP', field: 'cue', witness: { kind: 'envelope' } });
    expect(takeOff).toContain(`- id: ${found.step}\n    label: ${found.called}\n    cue: speed >= VMM F12`);
    expect(found.line).toBe(lineOf(planted, 'cue: speed >= 90 kt and'));
    expect(report.procedures[0]!.file).toBe('-');
  });

  test('in a branch and in the procedure itself has its own line', () => {
    const broken = changed(changed(clean, '        cue: then', "        cue: ''"), 'speed:', 'speed: "250" #');
    const { findings } = reported(['-'], broken).procedures[0]!;
    const lines = Object.fromEntries(findings.map((finding) => [finding.check, finding.line]));
    expect(lines['no-trigger']).toBe(lineOf(broken, "cue: ''"));
    expect(findings.find((finding) => finding.step === '')?.line).toBe(lineOf(broken, 'speed: "250" #'));
  });

  test('is told once for one cause', () => {
    const twice = planted.replace('cue: speed >= VMM F6 and', 'cue: speed >= 85 kt and');
    const { out } = cuewright(['check', '-'], twice);
    const { findings } = reported(['-'], twice).procedures[0]!;
    const causes = new Set(findings.map((finding) => finding.cause));
    expect(causes.size).toBeGreaterThan(1);
    expect(out.match(/^ {2}(STOP|ANSWER|ADVICE) · /gm)).toHaveLength(causes.size);
  });
});

describe('what is given', () => {
  test('standard input answers as the file does', () => {
    const [file, input] = [
      reported(['seed/procedures/go-around.yaml']),
      reported(['-'], seedText('procedures/go-around.yaml')),
    ];
    expect({ ...input.procedures[0], file: '' }).toEqual({ ...file.procedures[0], file: '' });
  });

  test('many files come in their order, each once', () => {
    const names = ['holding', 'direct-to', 'holding'].map((name) => `seed/procedures/${name}.yaml`);
    expect(reported(names).procedures.map(({ file }) => file)).toEqual(names.slice(0, 2));
  });

  test('JSON is read as YAML is', () => {
    const json = '{"format": "cuewright-procedure/1", "id": "pr_1", "title": "T", "steps": []}';
    const report = reported(['-'], json);
    expect(report.procedures[0]).toMatchObject({
      id: 'pr_1',
      remarks: [expect.stringContaining('names no aircraft type')],
    });
  });

  test('a sheet of another type answers nothing: not checked, and told why', () => {
    const report = reported(['seed/procedures/direct-to.yaml', '--sheet', 'tests/kit/other-sheet.yaml', '--strict']);
    const [procedure] = report.procedures;
    expect(report.exit).toBe(3);
    expect(procedure).toMatchObject({
      sheet: null,
      remarks: ['The procedure is for TN-182; there is a sheet of VQ-48 (tests/kit/other-sheet.yaml).'],
    });
    const needing = rulesUpTo('submission')
      .filter(({ needs, phases }) => needs.includes('sheet') && phases === 'all')
      .map(({ id }) => id);
    expect(procedure!.notChecked.map(({ check }) => check)).toEqual(expect.arrayContaining(needing));
    expect(procedure!.checked.rules).not.toContain(needing[0]);
  });

  test('of several sheets each procedure has that of its type; two of one type are not chosen between', () => {
    const sheets = ['seed/aircraft/tn-182-a.yaml', 'tests/kit/other-sheet.yaml'];
    const both = sheets.flatMap((sheet) => ['--sheet', sheet]);
    expect(reported(['seed/procedures/direct-to.yaml', ...both]).procedures[0]!.sheet).toMatchObject({
      file: sheets[0],
    });
    const folder = folderWith({ 'b.yaml': changed(seedText('aircraft/tn-182-a.yaml'), 'revision: A', 'revision: B') });
    const two = [...both, '--sheet', path.join(folder, 'b.yaml')];
    const [procedure] = reported(['seed/procedures/direct-to.yaml', ...two]).procedures;
    expect(procedure).toMatchObject({
      sheet: null,
      remarks: [expect.stringContaining('more than one sheet of TN-182')],
    });
  });

  test('the policy of a library is taken, unless another is named', () => {
    const policy = changed(seedText('library/policy.yaml'), 'version: "1"', 'version: "7"');
    const folder = folderWith({ 'library/policy.yaml': policy, 'library/terms.yaml': seedText('library/terms.yaml') });
    const ask = (...more: string[]) => reported(['-', '--library', 'library', ...more], clean, folder).against;
    expect(ask()).toMatchObject({
      policy: { file: path.join('library', 'policy.yaml'), version: '7' },
      library: { folder: 'library' },
    });
    const { out } = cuewright(['check', '-', '--library', 'library'], clean, folder);
    expect(out.split('\n')[0]).toMatch(/policy 7 of .*, library library$/);
    const named = folderWith({ 'own.yaml': changed(policy, 'version: "7"', 'version: "8"') });
    expect(ask('--policy', path.join(named, 'own.yaml'))).toMatchObject({ policy: { version: '8' } });
  });

  test('a policy that asks for more finds more', () => {
    const strict = changed(seedText('library/policy.yaml'), 'selectionMargin: 5', 'selectionMargin: 60');
    const folder = folderWith({ 'policy.yaml': strict });
    const report = reported(['seed/procedures', '--policy', path.join(folder, 'policy.yaml')]);
    expect(report.exit).toBe(1);
  });
});
