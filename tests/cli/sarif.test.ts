// sarif-2.1.0.json is the published schema (2.1.0-rtm.5), as the npm package @microsoft/jest-sarif 1.0.0-beta.0 (MIT) carries it.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { rules } from '../../lib/check/rules/index.ts';
import { seedText } from '../kit/seed.ts';
import { changed, cuewright, folderWith, reported } from './command.ts';

// Zod takes a reference for a whole address; the schema means what may be relative too.
const REFERENCE = "^([A-Za-z0-9._~:/?#@!$&'()*+,;=\\[\\]-]|%[0-9A-Fa-f]{2})*$";
const published = JSON.parse(
  readFileSync(new URL('sarif-2.1.0.json', import.meta.url), 'utf8').replaceAll(
    '"format": "uri-reference"',
    () => `"pattern": ${JSON.stringify(REFERENCE)}`,
  ),
) as { definitions: { artifactLocation: { properties: { uri: object } } } };
const schema = z.fromJSONSchema(published as never);

type Place = {
  physicalLocation: { artifactLocation: { uri: string }; region?: { startLine: number; startColumn: number } };
};
type Result = { ruleId: string; ruleIndex: number; level: string; message: { text: string }; locations: Place[] };
type Note = {
  level: string;
  message: { text: string };
  locations: Place[];
  associatedRule?: { id: string; index: number };
};
type Log = {
  version: string;
  runs: {
    tool: { driver: { name: string; rules: { id: string }[] } };
    invocations: { executionSuccessful: boolean; exitCode: number; toolExecutionNotifications: Note[] }[];
    results: Result[];
  }[];
};

const FOLDER = 'Oona’s drafts/50 % ready';
const planted = changed(
  seedText('procedures/engine-out-take-off.yaml'),
  'cue: speed >= VMM F12 and',
  'cue: speed >= 90 kt and',
);
const files = {
  [`${FOLDER}/engine-out.yaml`]: planted,
  [`${FOLDER}/go-around.yaml`]: seedText('procedures/go-around.yaml'),
  [`${FOLDER}/broken.yaml`]: 'format: cuewright-procedure/1\n',
};

const ask = (args: readonly string[], input = '', folder?: string): { code: number | null; log: Log } => {
  const { code, out } = cuewright(['check', ...args, '--format', 'sarif'], input, folder);
  return { code, log: JSON.parse(out) as Log };
};

describe('the interchange form', () => {
  const folder = () => folderWith(files);

  test('follows the published schema, and says what the JSON form says', () => {
    const where = folder();
    const { code, log } = ask([FOLDER], '', where);
    expect(schema.safeParse(log).error?.issues ?? []).toEqual([]);
    const report = reported([FOLDER], '', where);
    const [run] = log.runs;
    const found = report.procedures.flatMap((procedure) => procedure.findings);
    expect(found.length).toBeGreaterThan(0);
    expect(run!.results.map(({ ruleId, locations: [at] }) => [ruleId, at!.physicalLocation.region!.startLine])).toEqual(
      found.map(({ check, line }) => [check, line]),
    );
    expect(run!.results.filter(({ level }) => level === 'error')).toHaveLength(report.totals.STOP);
    for (const { ruleId, ruleIndex } of run!.results) expect(run!.tool.driver.rules[ruleIndex]!.id).toBe(ruleId);
    expect(run!.tool.driver.rules).toHaveLength(rules.length);
    expect(run!.results[0]!.locations[0]!.physicalLocation.artifactLocation.uri).toBe(
      'Oona%E2%80%99s%20drafts/50%20%25%20ready/engine-out.yaml',
    );
    const [invocation] = run!.invocations;
    expect(invocation).toMatchObject({ executionSuccessful: false, exitCode: code });
    const notes = invocation!.toolExecutionNotifications;
    expect(
      notes.filter(({ level }) => level === 'error').map(({ locations: [at] }) => at!.physicalLocation.region),
    ).toEqual(
      report.unreadable.flatMap(({ problems }) =>
        problems.map(({ line, column }) => ({ startLine: line, startColumn: column })),
      ),
    );
    const unasked = report.procedures.flatMap((procedure) => procedure.notChecked.map(({ check }) => check));
    expect(notes.flatMap(({ associatedRule }) => associatedRule?.id ?? [])).toEqual(unasked);
    expect(unasked.length).toBeGreaterThan(0);
  });

  test('is whole when there is no STOP, and when nothing can be read', () => {
    const clear = ask(['-'], seedText('procedures/direct-to.yaml'));
    expect(clear.code).toBe(0);
    expect(clear.log.runs[0]).toMatchObject({ invocations: [{ executionSuccessful: true, exitCode: 0 }] });
    const nothing = ask(['-', '--policy', 'missing.yaml']);
    expect(nothing.log.runs[0]!.invocations[0]!.toolExecutionNotifications[0]!.message.text).toContain('no such file');
    for (const { log } of [clear, nothing]) expect(schema.safeParse(log).error?.issues ?? []).toEqual([]);
  });

  test('the schema, as read here, refuses what is wrong', () => {
    expect(published.definitions.artifactLocation.properties.uri).toMatchObject({ pattern: REFERENCE });
    const result = { message: { text: 'x' } };
    const log = (run: object) => ({ version: '2.1.0', runs: [{ tool: { driver: { name: 'x' } }, ...run }] });
    const region = (startLine: number) => ({ locations: [{ physicalLocation: { region: { startLine } } }] });
    expect(schema.safeParse(log({ results: [{ ...result, ...region(1) }] })).success).toBe(true);
    const wrong = [
      log({ results: [{ message: {}, level: 'grave' }] }),
      log({ results: [{}] }),
      log({ results: [{ ...result, ...region(0) }] }),
      log({ results: [{ ...result, marmalade: 1 }] }),
      log({ artifacts: [{ location: { uri: 'a draft.yaml' } }] }),
      log({ invocations: [{ exitCode: 0 }] }),
      { ...log({}), version: '2.0.0' },
      { version: '2.1.0', runs: [{}] },
    ];
    for (const each of wrong) expect(schema.safeParse(each).success, JSON.stringify(each)).toBe(false);
  });
});
