import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readArguments } from '../../lib/cli/arguments.ts';
import type { FlyReport } from '../../lib/cli/fly-report.ts';
import { figuresOf } from '../../lib/flight/figures.ts';
import { flyProcedure } from '../../lib/flight/fly.ts';
import { readRecording } from '../../lib/flight/recording.ts';
import { conditionsFor, settingsFor } from '../../lib/flight/start.ts';
import { SAMPLE_COLUMNS } from '../../lib/flight/trace.ts';
import { seedProcedure, seedText } from '../kit/seed.ts';
import { housePolicy, tn182 } from '../kit/world.ts';
import { changed, cuewright, lineOf } from './command.ts';

const GO_AROUND = 'seed/procedures/go-around.yaml';
const page = readFileSync(new URL('../../lib/cli/format.md', import.meta.url), 'utf8');

function flown(...args: readonly string[]): FlyReport {
  const { code, out, err } = cuewright(['fly', ...args, '--format', 'json']);
  expect(err).toBe('');
  const report = JSON.parse(out) as FlyReport;
  expect(report.exit).toBe(code);
  return report;
}

describe('what is asked for', () => {
  test('has figures with signs and units', () => {
    const asked = [
      'fly',
      'a.yaml',
      '--weight',
      '58.5t',
      '--wind',
      '-10',
      '--temperature',
      'ISA-28',
      '--elevation=120ft',
    ];
    expect(readArguments(asked)).toEqual({
      ok: true,
      value: {
        ...{ name: 'fly', file: 'a.yaml', sheets: [], policy: null, library: null, format: 'text', weight: 58_500 },
        given: { wind: -10, temperature: -28, elevation: 120 },
      },
    });
    const planned = readArguments([
      'fly',
      '-',
      '--weight',
      '61000kg',
      '--detent',
      'F6',
      '--standard',
      'B',
      '--format',
      'csv',
    ]);
    expect(planned).toMatchObject({ value: { file: '-', weight: 61_000, given: { detent: 'F6', standard: 'B' } } });
    expect(readArguments(['fly', '--help'])).toEqual({ ok: true, value: { name: 'help' } });
  });

  test.each([
    [['fly'], 'No procedure is named: give a file, or - for standard input.'],
    [['fly', 'a', 'b'], 'One procedure is flown at a time.'],
    [['fly', 'a', '--weight', '58'], '"58" is no weight: type 58t or 58000kg.'],
    [['fly', 'a', '--wind', '10 m/s'], '"10 m/s" is no wind: type -10 or -10kt, a tail wind being negative.'],
    [['fly', 'a', '--temperature', 'cold'], '"cold" is no temperature: type ISA+25 or -40.'],
    [['fly', 'a', '--format', 'sarif'], '"sarif" is no format: text, json, csv are.'],
    [['fly', 'a', '--wieght', '58t'], 'There is no option --wieght. Did you mean --weight?'],
  ])('%j is refused with a sentence', (args, error) => {
    expect(readArguments(args)).toEqual({ ok: false, error });
  });
});

describe('a flight', () => {
  test('has the figures of the engine, whoever asks it', () => {
    const { flight } = flown(GO_AROUND, '--weight', '48t', '--wind', '-5');
    const procedure = seedProcedure('go-around');
    const facts = { sheet: tn182, policy: housePolicy };
    const conditions = conditionsFor(procedure, facts, { weight: 48_000, wind: -5 });
    const trace = flyProcedure(procedure, facts, conditions, settingsFor(procedure, tn182));
    expect(flight?.conditions).toEqual(conditions);
    expect(flight?.figures).toEqual(figuresOf(procedure, trace));
    expect(flight?.events).toHaveLength(trace.events.length);
    expect(flight?.engine).toBe(trace.version);
  });

  test('is told with its assumptions first, at 48 t CAPTURE at 30 s', () => {
    const { code, out } = cuewright(['fly', GO_AROUND, '--weight', '48t', '--library', 'seed/library']);
    expect(code).toBe(0);
    const places = [
      'Taken for granted',
      'The model cannot say',
      'ft/min  what',
      'PM busy',
      'Worst case',
      'Checks that need time',
    ];
    const found = places.map((words) => out.indexOf(words));
    expect(found).toEqual(found.toSorted((a, b) => a - b));
    expect(found[0]).toBeGreaterThan(0);
    expect(out).toMatch(/ 30 {3}1 480 {3}186 {3}4 200 {2}GOVERN · ROUTE · CAPTURE/);
    expect(out).toMatch(/Not for dispatch\.\n$/);
  });

  test('without a weight is that of the worst one', () => {
    const { flight } = flown(GO_AROUND);
    expect(flight?.worst).toContain(`at ${String(flight!.conditions.weight / 1_000)} t`);
  });

  test('as a table has the documented header, and can be laid over another', () => {
    const { code, out } = cuewright(['fly', GO_AROUND, '--weight', '48t', '--format', 'csv']);
    expect(code).toBe(0);
    const lines = out.trimEnd().split('\n');
    const header = lines.find((line) => !line.startsWith('#'))!.split(',');
    expect(header).toHaveLength(SAMPLE_COLUMNS.length);
    for (const column of header) expect(page).toContain(`\`${column}\``);
    const { rows, columns, problems } = readRecording(out);
    expect(problems).toEqual([]);
    expect(columns).toEqual(['time', 'height', 'altitude', 'speed', 'distance', 'vertical speed']);
    expect(rows).toHaveLength(lines.length - 4);
  });

  test('ends with 1 where a check that needs time stops it, and says where', () => {
    const text = seedText('procedures/instrument-approach.yaml');
    const late = changed(
      text,
      'cue: distance to "runway end" <= 15 NM and speed',
      'cue: distance to "runway end" <= 4 NM and speed',
    );
    const { code, out } = cuewright(['fly', '-', '--weight', '58t', '--format', 'json'], late);
    const { flight } = JSON.parse(out) as FlyReport;
    expect(code).toBe(1);
    const stop = flight!.findings.find(({ severity }) => severity === 'STOP')!;
    expect(stop.witness).toMatchObject({ kind: 'flight' });
    expect(late.split('\n')[stop.line - 1]).toContain('cue:');
  });

  test('gives the same bytes twice', () => {
    const once = (): string => cuewright(['fly', GO_AROUND, '--weight', '55t', '--format', 'json']).out;
    expect(once()).toBe(once());
  });

  test.each(['direct-to', 'engine-out-take-off', 'instrument-approach'])(
    '%s is flown to an end, or the reason is said',
    (name) => {
      const { code, out, err } = cuewright(['fly', `seed/procedures/${name}.yaml`, '--weight', '60t']);
      expect([code, err]).toEqual([0, '']);
      expect(out).toContain('Checks that need time');
    },
  );
});

describe('what can not be flown', () => {
  test('is a weight outside the sheet: a sentence, and 2', () => {
    const { code, out } = cuewright(['fly', GO_AROUND, '--weight', '90t']);
    expect(code).toBe(2);
    expect(out).toContain('A weight of 90.0 t is outside the sheet: 46.0 t to 78.6 t.');
  });
  test('is a file that can not be read: with line and column', () => {
    const text = seedText('procedures/go-around.yaml');
    const broken = changed(text, 'verb: decide', 'verb: dcide');
    const { code, out } = cuewright(['fly', '-', '--weight', '58t'], broken);
    expect(code).toBe(2);
    expect(out).toContain(`standard input:${lineOf(broken, 'verb: dcide')}:`);
    expect(out).toMatch(/Nothing was flown\.\n$/);
    expect(cuewright(['fly', 'missing.yaml', '--weight', '58t'])).toMatchObject({ code: 2, err: '' });
  });
  test('as a table keeps the output clean', () => {
    const { code, out, err } = cuewright(['fly', 'missing.yaml', '--format', 'csv']);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain('There is no such file.');
  });
});

test('every field of the JSON form is told on its page', () => {
  const namesIn = (value: unknown): string[] => {
    if (Array.isArray(value)) return value.flatMap(namesIn);
    if (value === null || typeof value !== 'object') return [];
    return Object.entries(value).flatMap(([key, inner]) => [key, ...namesIn(inner)]);
  };
  const names = new Set(namesIn(flown(GO_AROUND, '--weight', '48t', '--library', 'seed/library')));
  expect(names.size).toBeGreaterThan(40);
  expect([...names].filter((name) => !page.includes(`\`${name}\``))).toEqual([]);
});
