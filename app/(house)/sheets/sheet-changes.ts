// What differs between two revisions of a sheet, a line each, by place. Pure.
import type { Sheet } from '../../../lib/aircraft/sheet.ts';

/** `was` or `is` '' where there was, or is, nothing. `number`: how much more it is, where both are numbers. */
export type SheetChange = {
  readonly at: string;
  readonly was: string;
  readonly is: string;
  readonly more: number | null;
};

/** Lists whose parts have a name or id are compared by it, so that one put in between moves no other. */
const keyOf = (part: unknown): string | null => {
  if (part === null || typeof part !== 'object' || Array.isArray(part)) return null;
  const { name, id, runway, detents } = part as Record<string, unknown>;
  if (typeof id === 'string') return id;
  if (typeof name !== 'string') return null;
  return [name, runway, Array.isArray(detents) ? detents.join(' ') : undefined].filter(Boolean).join(' ');
};

function partsOf(value: unknown): ReadonlyMap<string, unknown> | null {
  if (value === null || typeof value !== 'object') return null;
  if (!Array.isArray(value)) return new Map(Object.entries(value));
  const keys = value.map(keyOf);
  const named = keys.every((key) => key !== null) && new Set(keys).size === keys.length;
  return new Map(value.map((part, i) => [named ? keys[i]! : String(i), part]));
}

const said = (value: unknown): string => (value === undefined || value === null ? '' : String(value));

function differ(was: unknown, is: unknown, at: string): readonly SheetChange[] {
  const [before, after] = [partsOf(was), partsOf(is)];
  if (before === null && after === null) {
    if (was === is) return [];
    const more = typeof was === 'number' && typeof is === 'number' ? is - was : null;
    return [{ at, was: said(was), is: said(is), more }];
  }
  const names = new Set([...(before?.keys() ?? []), ...(after?.keys() ?? [])]);
  return [...names].flatMap((name) => differ(before?.get(name), after?.get(name), at === '' ? name : `${at}.${name}`));
}

export const sheetChanges = (was: Sheet, is: Sheet): readonly SheetChange[] => differ(was, is, '');
