// The policy as fields: generated from its schema, so that a new threshold has a field and a line the day it is there.
// Pure: read on the server for the page, in the browser for the form.
import { z } from 'zod';
import { type Policy, policySchema } from '../../../lib/policy/policy.ts';
import { GROUPS, unitOf, wordsFor } from './policy-words.ts';

export type PolicyField = {
  /** Place in the policy, such as `speeds.bandMinimum`. */
  readonly path: string;
  readonly label: string;
  readonly unit: string;
} & (
  | { readonly kind: 'number'; readonly least: number | null; readonly most: number | null; readonly whole: boolean }
  | { readonly kind: 'choice'; readonly choices: readonly string[] }
  | { readonly kind: 'words' }
  | { readonly kind: 'text' }
);
export type PolicyGroup = { readonly title: string; readonly fields: readonly PolicyField[] };

type Schema = {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly enum?: readonly string[];
  readonly const?: unknown;
  readonly minimum?: number;
  readonly exclusiveMinimum?: number;
  readonly maximum?: number;
};

function fieldsUnder(schema: Schema, path: string): PolicyField[] {
  if (schema.const !== undefined) return [];
  if (schema.properties) {
    return Object.entries(schema.properties).flatMap(([key, part]) =>
      fieldsUnder(part, path === '' ? key : `${path}.${key}`),
    );
  }
  const named = { path, label: wordsFor(path), unit: unitOf(path) };
  if (schema.enum) return [{ ...named, kind: 'choice', choices: schema.enum }];
  if (schema.type === 'array') return [{ ...named, kind: 'words' }];
  if (schema.type === 'string') return [{ ...named, kind: 'text' }];
  const whole = schema.type === 'integer';
  const least = schema.minimum ?? (schema.exclusiveMinimum === undefined ? null : schema.exclusiveMinimum);
  return [{ ...named, kind: 'number', least, most: schema.maximum ?? null, whole }];
}

const ALL = fieldsUnder(z.toJSONSchema(policySchema, { io: 'input' }) as Schema, '');

/** Every field in its named group; what belongs to none of them stands in the last one. */
export const policyGroups: readonly PolicyGroup[] = GROUPS.map(({ title, under }) => ({
  title,
  fields: ALL.filter(({ path }) => {
    const top = path.split('.')[0]!;
    return under === null ? !GROUPS.some((group) => group.under === top) : under === top;
  }),
}));

export function valueAt(policy: unknown, path: string): unknown {
  return path.split('.').reduce<unknown>((part, key) => (part as Record<string, unknown> | undefined)?.[key], policy);
}

/** A value as it is typed in the form and told in a list: words one a line. */
export const asTyped = (value: unknown): string => (Array.isArray(value) ? value.join('\n') : String(value ?? ''));

/** The policy that a form's words say. What is no number stays a word, so that the schema can point at it. */
export function policyFrom(typed: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const policy: Record<string, unknown> = { format: 1 };
  for (const field of ALL) {
    const text = String(typed[field.path] ?? '').trim();
    const keys = field.path.split('.');
    const last = keys.pop()!;
    let part = policy;
    for (const key of keys) part = (part[key] ??= {}) as Record<string, unknown>;
    part[last] = meant(field, text);
  }
  return policy;
}

function meant(field: PolicyField, text: string): unknown {
  if (field.kind === 'words') {
    return text
      .split('\n')
      .map((line) => line.trim())
      .filter(Boolean);
  }
  if (field.kind !== 'number' || text === '') return text;
  const value = Number(text.replaceAll(' ', ''));
  return Number.isFinite(value) ? value : text;
}

export type PolicyChange = { readonly path: string; readonly label: string; readonly says: string };

/** What differs between two versions, a line each; nothing when they say the same. */
export function policyChanges(before: Policy, after: unknown): readonly PolicyChange[] {
  return ALL.flatMap((field) => {
    const [was, is] = [valueAt(before, field.path), valueAt(after, field.path)];
    if (asTyped(was) === asTyped(is)) return [];
    return [{ path: field.path, label: field.label, says: changeOf(field, was, is) }];
  });
}

function changeOf(field: PolicyField, was: unknown, is: unknown): string {
  if (!Array.isArray(was) || !Array.isArray(is))
    return `${asTyped(was)} → ${asTyped(is)}${field.unit && ` ${field.unit}`}`;
  const said = (sign: string, words: readonly unknown[]) => words.map((word) => `${sign} “${String(word)}”`);
  const gone = said(
    'without',
    was.filter((word) => !is.includes(word)),
  );
  const come = said(
    'with',
    is.filter((word) => !was.includes(word)),
  );
  return [...gone, ...come].join(', ') || 'in another order';
}
