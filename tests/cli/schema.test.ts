import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import { SCHEMAS } from '../../lib/cli/arguments.ts';
import { procedureNames, seedText } from '../kit/seed.ts';
import { cuewright, ROOT } from './command.ts';

/** As the reader sees them: every value of a procedure or library is text. */
const texts = (path: string): unknown => parse(seedText(path), { schema: 'failsafe' });
const values = (path: string): unknown => parse(seedText(path));
const libraryParts = readdirSync(`${ROOT}seed/library`).filter((name) => name !== 'policy.yaml');

const FILES: Readonly<Record<(typeof SCHEMAS)[number], readonly unknown[]>> = {
  procedure: procedureNames().map((name) => texts(`procedures/${name}.yaml`)),
  sheet: [values('aircraft/tn-182-a.yaml')],
  library: libraryParts.map((name) => texts(`library/${name}`)),
  policy: [values('library/policy.yaml')],
};

describe.each(SCHEMAS)('the schema of a %s', (name) => {
  const { code, out } = cuewright(['schema', name]);
  const schema = JSON.parse(out) as { $schema: string; title: string; properties: Record<string, unknown> };
  const check = z.fromJSONSchema(schema as never);

  test('is JSON Schema that an editor completes from', () => {
    expect(code).toBe(0);
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      type: 'object',
      additionalProperties: false,
    });
    expect(Object.keys(schema.properties)).toContain('format');
  });

  test('takes the files of the demo operator', () => {
    expect(FILES[name].length).toBeGreaterThan(0);
    for (const file of FILES[name]) expect(check.safeParse(file).error?.issues ?? []).toEqual([]);
  });

  test('refuses a field that nobody knows, and a file without its first line', () => {
    for (const file of FILES[name] as Record<string, unknown>[]) {
      const { format: _, ...rest } = file;
      expect(check.safeParse({ ...file, marmalade: '1' }).success).toBe(false);
      expect(check.safeParse(rest).success).toBe(false);
    }
  });
});
