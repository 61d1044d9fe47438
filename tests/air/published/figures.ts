// The published figures of topics 1, 2, 4, 5, 7, 9 and 10, one a line, and how a test makes use of one.
import { readFileSync } from 'node:fs';

export interface Figure {
  readonly id: string;
  readonly topic: string;
  readonly statement: string;
  readonly inputs: Readonly<Record<string, unknown>> | null;
  readonly expected: unknown;
  readonly unit: string;
  readonly tolerance: string;
  readonly source: string;
  readonly section: string;
  /** The figure was recalled and not read from its source. */
  readonly fromMemory: boolean;
  /** The figure was computed from a formula, so it guards against change and proves nothing by itself. */
  readonly derived: boolean;
  readonly recomputed: unknown;
}

export const FIGURES: readonly Figure[] = readFileSync(new URL('./figures.jsonl', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '')
  .map((line) => JSON.parse(line) as Figure);

/** What a figure was published for. */
export class Given {
  readonly figure: Figure;
  constructor(figure: Figure) {
    this.figure = figure;
  }
  many(name: string): readonly number[] {
    const value = this.figure.inputs?.[name];
    const list = Array.isArray(value) ? value : [value];
    if (!list.every((each) => typeof each === 'number')) throw new Error(`${this.figure.id} has no number ${name}`);
    return list;
  }
  one(name: string): number {
    return this.many(name)[0] as number;
  }
  has(name: string): boolean {
    return this.figure.inputs !== null && name in this.figure.inputs;
  }
}

/** How far a computed value may lie from a printed one. */
export type Within = (want: number) => number;
export const abs =
  (most: number): Within =>
  () =>
    most;
export const rel =
  (most: number): Within =>
  (want) =>
    Math.abs(want) * most;

export interface Use {
  /** The values of the figure, computed by the code, in the order and units printed. */
  readonly got: (given: Given) => readonly number[];
  /** One for all values, or one for each. As wide as the figure's own tolerance, never wider unless `why` says so. */
  readonly within: Within | readonly Within[];
  /** The printed values as numbers, where they are not printed so or are a misprint. */
  readonly want?: readonly number[];
  /** Said in the table: a misprint, a rule of thumb, a part left out. */
  readonly why?: string;
}

export type Uses = Readonly<Record<string, Use>>;

export function wanted(figure: Figure, use: Use): readonly number[] {
  const printed = use.want ?? (Array.isArray(figure.expected) ? figure.expected : [figure.expected]);
  if (!printed.every((each) => typeof each === 'number')) throw new Error(`${figure.id} is not printed in numbers`);
  return printed as readonly number[];
}

/** The same use for several figures. */
export const each = (ids: readonly string[], use: Use): Uses => Object.fromEntries(ids.map((id) => [id, use]));
