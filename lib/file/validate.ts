// From what the schema found wrong to what a person is told.
import type { z } from 'zod';
import { err, ok, type Result } from '../base/result.ts';
import { nearest } from '../gate/nearest.ts';
import { type Plain, type PlainFile, type PlainOptions, readPlain } from './plain-yaml.ts';
import { type FileProblem, PROBLEMS_SHOWN, pathText } from './problem.ts';

type Path = readonly (string | number)[];
type Issue = z.core.$ZodIssue;
export type Read<T> = { readonly value: T; readonly where: PlainFile['where'] };

/** Text, checked against a schema. Nothing is left out in silence: a field nobody knows is a problem. */
export function readAs<T>(
  schema: z.ZodType<T>,
  text: string,
  name: string,
  options: PlainOptions,
): Result<Read<T>, FileProblem[]> {
  const plain = readPlain(text, name, options);
  if (!plain.ok) return plain;
  const found = schema.safeParse(withoutNothing(plain.value.value));
  if (found.success) return ok({ value: found.data, where: plain.value.where });
  const problems = found.error.issues.flatMap((issue) => problemsOf(issue, [], schema, plain.value));
  return err(problems.slice(0, PROBLEMS_SHOWN));
}

/** `say: null` and `say:` both say nothing, as if the field were left out. The name stays, so that an unknown one is seen. */
function withoutNothing(value: Plain): unknown {
  if (Array.isArray(value)) return value.map(withoutNothing);
  if (value === null || typeof value === 'string') return value;
  return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, v === null ? undefined : withoutNothing(v)]));
}

function problemsOf(issue: Issue, above: Path, schema: z.ZodType, file: PlainFile): FileProblem[] {
  const path = [...above, ...issue.path.map((key) => (typeof key === 'symbol' ? String(key) : key))];
  const tell = (at: Path, message: string, expected: readonly string[], fix?: string | null): FileProblem => ({
    ...file.where(at),
    path: pathText(at),
    message,
    expected,
    ...(fix ? { fix } : {}),
  });
  const here = at(file.value, path);
  const field = path.length === 0 ? 'The file' : `${pathText(path)}`;
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.slice(0, PROBLEMS_SHOWN).map((key) => {
        const known = keysAt(schema, path);
        const meant = nearest(key, known);
        return tell([...path, key], `There is no field "${key}" here.`, known, meant && `Write ${meant}.`);
      });
    case 'invalid_value': {
      const choices = issue.values.map(String);
      const said = typeof here === 'string' ? here : '';
      const meant = nearest(said, choices);
      const message = here === undefined ? `${field} is missing.` : `"${short(said)}" can't stand in ${field}.`;
      return [tell(path, message, choices, meant && `Write ${meant}.`)];
    }
    case 'invalid_type':
      return [
        tell(path, here === undefined ? `${field} is missing.` : `${field} is ${kindOf(here)}.`, [
          wanted(issue.expected),
        ]),
      ];
    case 'invalid_union': {
      // The way of reading that came furthest says it best.
      const deepest = [...issue.errors].sort((a, b) => depth(b) - depth(a))[0];
      if (deepest === undefined || depth(deepest) === 0)
        return [tell(path, `${field} is ${kindOf(here)}.`, ['text, or a list, or a record'])];
      return deepest.flatMap((inner) => problemsOf(inner, path, schema, file));
    }
    case 'too_big':
      return [
        tell(path, `${field} is too long.`, [
          `at most ${issue.maximum} ${typeof here === 'string' ? 'characters' : 'entries'}`,
        ]),
      ];
    case 'invalid_format':
      return [
        tell(path, `"${short(String(here))}" can't stand in ${field}.`, ['letters, digits, _ and -, at most 64']),
      ];
    default:
      return [tell(path, `${field}: ${issue.message}.`, [])];
  }
}

const depth = (issues: readonly Issue[]): number =>
  Math.max(0, ...issues.map((i) => i.path.length + (i.code === 'unrecognized_keys' ? 1 : 0)));
const short = (text: string): string => (text.length > 40 ? `${text.slice(0, 40)}…` : text);
const wanted = (type: string): string =>
  ({ string: 'text', array: 'a list', object: 'a record of fields' })[type] ?? type;

function kindOf(value: unknown): string {
  if (value === undefined) return 'missing';
  if (value === null) return 'empty';
  if (typeof value === 'string') return `the text "${short(value)}"`;
  return Array.isArray(value) ? 'a list' : 'a record of fields';
}

function at(value: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (inner, key) => (inner as Record<string | number, unknown> | undefined | null)?.[key],
    value,
  );
}

/** The fields that the schema knows at a path. */
function keysAt(schema: z.ZodType, path: Path): string[] {
  let open = [schema as unknown as Inside];
  for (const key of path) {
    open = open
      .flatMap(unwrap)
      .flatMap((s) =>
        typeof key === 'number' ? (s.element ? [s.element] : []) : s.shape?.[key] ? [s.shape[key]] : [],
      );
  }
  return [...new Set(open.flatMap(unwrap).flatMap((s) => Object.keys(s.shape ?? {})))];
}

type Inside = { shape?: Record<string, Inside>; element?: Inside; options?: Inside[]; unwrap?: () => Inside };

function unwrap(schema: Inside): Inside[] {
  if (schema.options) return schema.options.flatMap(unwrap);
  if (schema.element || schema.shape) return [schema];
  return typeof schema.unwrap === 'function' ? unwrap(schema.unwrap()) : [schema];
}
