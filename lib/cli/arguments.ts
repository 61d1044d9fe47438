import { parseArgs } from 'node:util';
import { err, ok, type Result } from '../base/result.ts';
import { type FlyCommand, readFly } from './fly-arguments.ts';
import { meant } from './meant.ts';

export const FORMATS = ['text', 'json', 'sarif'] as const;
export type Format = (typeof FORMATS)[number];
export const SCHEMAS = ['procedure', 'sheet', 'library', 'policy'] as const;
export type SchemaName = (typeof SCHEMAS)[number];

export type CheckCommand = {
  readonly name: 'check';
  /** As typed; `-` is standard input. */
  readonly files: readonly string[];
  readonly sheets: readonly string[];
  readonly policy: string | null;
  readonly library: string | null;
  readonly format: Format;
  readonly strict: boolean;
};
export type Command =
  | CheckCommand
  | FlyCommand
  | { readonly name: 'explain'; readonly words: readonly string[] }
  | { readonly name: 'schema'; readonly of: SchemaName }
  | { readonly name: 'help' };

const COMMANDS = ['check', 'fly', 'explain', 'schema', 'help'];
const OPTIONS = {
  sheet: { type: 'string', multiple: true },
  policy: { type: 'string' },
  library: { type: 'string' },
  format: { type: 'string' },
  strict: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** What was asked for; else a sentence that says what is wrong with the way it was asked. */
export function readArguments(args: readonly string[]): Result<Command, string> {
  if (args[0] === 'fly' && !args.includes('--help') && !args.includes('-h')) return readFly(args.slice(1));
  const read = parsed(args[0] === 'fly' ? ['help'] : args);
  if (!read.ok) return read;
  const { values, positionals } = read.value;
  const [name, ...rest] = positionals;
  if (values.help || name === 'help') return ok({ name: 'help' });
  if (name === undefined) return err('A command is expected: check, fly, explain or schema.');
  if (name !== 'check' && Object.keys(values).length > 0) return err(`${name} takes no options.`);
  switch (name) {
    case 'check':
      return checkCommand(values, rest);
    case 'explain':
      return ok({ name, words: rest });
    case 'schema':
      return schemaCommand(rest);
    default:
      return err(`There is no command "${name}".${meant(name, COMMANDS)}`);
  }
}

type Values = ReturnType<typeof parseAll>['values'];
const parseAll = (args: readonly string[]) => parseArgs({ args: [...args], options: OPTIONS, allowPositionals: true });

function parsed(args: readonly string[]): Result<ReturnType<typeof parseAll>, string> {
  const unknown = args
    .slice(0, args.includes('--') ? args.indexOf('--') : args.length)
    .flatMap((arg) => /^--([^=]+)/.exec(arg)?.[1] ?? [])
    .find((name) => !Object.hasOwn(OPTIONS, name));
  if (unknown !== undefined)
    return err(`There is no option --${unknown}.${meant(unknown, Object.keys(OPTIONS), '--')}`);
  try {
    return ok(parseAll(args));
  } catch (error) {
    // What is left: a value is missing, or stands where none may.
    return err(error instanceof Error ? error.message.split('\n')[0]! : String(error));
  }
}

function checkCommand(values: Values, files: readonly string[]): Result<Command, string> {
  if (files.length === 0) return err('No procedure is named: give files, or - for standard input.');
  if (files.filter((file) => file === '-').length > 1) return err('Standard input can be read once: one - is enough.');
  const format = FORMATS.find((known) => known === (values.format ?? 'text'));
  if (format === undefined) return err(`"${values.format}" is no format: ${FORMATS.join(', ')} are.`);
  return ok({
    name: 'check',
    files: [...new Set(files)],
    sheets: values.sheet ?? [],
    policy: values.policy ?? null,
    library: values.library ?? null,
    format,
    strict: values.strict ?? false,
  });
}

function schemaCommand(rest: readonly string[]): Result<Command, string> {
  const of = SCHEMAS.find((known) => known === rest[0]);
  if (of !== undefined && rest.length === 1) return ok({ name: 'schema', of });
  return err(`The schema of what? One of ${SCHEMAS.join(', ')}.${meant(rest[0] ?? '', SCHEMAS)}`);
}
