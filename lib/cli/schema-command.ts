import { z } from 'zod';
import { sheetSchema } from '../aircraft/sheet.ts';
import { libraryJsonSchema } from '../file/library-file.ts';
import { procedureJsonSchema } from '../file/procedure-file.ts';
import { policySchema } from '../policy/policy.ts';
import type { SchemaName } from './arguments.ts';
import { EXIT, type Exit } from './exit.ts';

const of = (schema: z.ZodType) => z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input' });

const SCHEMA: Readonly<Record<SchemaName, () => Record<string, unknown>>> = {
  procedure: procedureJsonSchema,
  sheet: () => of(sheetSchema),
  library: libraryJsonSchema,
  policy: () => of(policySchema),
};
const TITLE: Readonly<Record<SchemaName, string>> = {
  procedure: 'A procedure',
  sheet: 'A type data sheet',
  library: 'A part of a library',
  policy: "An operator's policy",
};

/** Prints JSON Schema (2020-12) of a kind of file. */
export function schema(name: SchemaName): Exit {
  const { $schema, ...rest } = SCHEMA[name]();
  process.stdout.write(`${JSON.stringify({ $schema, title: TITLE[name], ...rest }, null, 2)}\n`);
  return EXIT.clear;
}
