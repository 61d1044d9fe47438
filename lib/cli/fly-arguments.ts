import { parseArgs } from 'node:util';
import { err, ok, type Result } from '../base/result.ts';
import type { Conditions } from '../flight/trace.ts';
import { meant } from './meant.ts';

const FLY_FORMATS = ['text', 'json', 'csv'] as const;
type FlyFormat = (typeof FLY_FORMATS)[number];

export type FlyCommand = {
  readonly name: 'fly';
  /** As typed; `-` is standard input. */
  readonly file: string;
  readonly sheets: readonly string[];
  readonly policy: string | null;
  readonly library: string | null;
  readonly format: FlyFormat;
  /** kg; null: the worst of all weights. */
  readonly weight: number | null;
  /** What else was given. */
  readonly given: Partial<Conditions>;
};

const OPTIONS = {
  weight: { type: 'string' },
  wind: { type: 'string' },
  temperature: { type: 'string' },
  elevation: { type: 'string' },
  detent: { type: 'string' },
  standard: { type: 'string' },
  sheet: { type: 'string', multiple: true },
  policy: { type: 'string' },
  library: { type: 'string' },
  format: { type: 'string' },
} as const;

/** What stands behind `fly`; else a sentence. A minus before a figure is a sign, not an option. */
export function readFly(args: readonly string[]): Result<FlyCommand, string> {
  const unknown = args
    .flatMap((arg) => /^--([^=]+)/.exec(arg)?.[1] ?? [])
    .find((name) => !Object.hasOwn(OPTIONS, name));
  if (unknown !== undefined)
    return err(`There is no option --${unknown}.${meant(unknown, Object.keys(OPTIONS), '--')}`);
  try {
    const { values, positionals } = parseArgs({ args: signed(args), options: OPTIONS, allowPositionals: true });
    return flyCommand(values, positionals);
  } catch (error) {
    return err(error instanceof Error ? error.message.split('\n')[0]! : String(error));
  }
}

/** `--wind -10` as `--wind=-10`. */
function signed(args: readonly string[]): string[] {
  const joined: string[] = [];
  for (const arg of args) {
    const last = joined.at(-1);
    if (/^-\d/.test(arg) && last !== undefined && /^--[a-z]+$/.test(last)) joined[joined.length - 1] = `${last}=${arg}`;
    else joined.push(arg);
  }
  return joined;
}

type Values = Partial<Record<Exclude<keyof typeof OPTIONS, 'sheet'>, string>> & { readonly sheet?: string[] };

function flyCommand(values: Values, files: readonly string[]): Result<FlyCommand, string> {
  const [file, ...more] = files;
  if (file === undefined) return err('No procedure is named: give a file, or - for standard input.');
  if (more.length > 0) return err('One procedure is flown at a time.');
  const format = FLY_FORMATS.find((known) => known === (values.format ?? 'text'));
  if (format === undefined) return err(`"${values.format}" is no format: ${FLY_FORMATS.join(', ')} are.`);
  const weight = amount(values.weight, 'weight', /^(?:t|kg)$/, '58t or 58000kg');
  if (!weight.ok) return weight;
  const wind = amount(values.wind, 'wind', /^(?:kt)?$/, '-10 or -10kt, a tail wind being negative');
  if (!wind.ok) return wind;
  const temperature = amount(values.temperature?.replace(/^ISA\s*/i, ''), 'temperature', /^(?:°C)?$/, 'ISA+25 or -40');
  if (!temperature.ok) return temperature;
  const elevation = amount(values.elevation, 'elevation', /^(?:ft)?$/, '5430 or 5430ft');
  if (!elevation.ok) return elevation;
  return ok({
    name: 'fly',
    file,
    sheets: values.sheet ?? [],
    policy: values.policy ?? null,
    library: values.library ?? null,
    format,
    weight: weight.value === null ? null : weight.value.figure * (weight.value.unit === 't' ? 1_000 : 1),
    given: {
      ...(wind.value && { wind: wind.value.figure }),
      ...(temperature.value && { temperature: temperature.value.figure }),
      ...(elevation.value && { elevation: elevation.value.figure }),
      ...(values.detent !== undefined && { detent: values.detent }),
      ...(values.standard !== undefined && { standard: values.standard }),
    },
  });
}

type Amount = { readonly figure: number; readonly unit: string };

function amount(text: string | undefined, name: string, units: RegExp, like: string): Result<Amount | null, string> {
  if (text === undefined) return ok(null);
  const said = /^([+-]?\d+(?:\.\d+)?)\s*(\D*)$/.exec(text.trim());
  if (said === null || !units.test(said[2]!)) return err(`"${text}" is no ${name}: type ${like}.`);
  return ok({ figure: Number(said[1]), unit: said[2]! });
}
