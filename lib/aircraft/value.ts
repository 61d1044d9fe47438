import { z } from 'zod';

/** Larger figures mean a slip of the keyboard; no quantity of an aircraft comes near. */
const LARGEST = 1e9;

const plainNumber = z
  .number({ error: (issue) => `a number is expected, not ${shown(issue.input)}` })
  .refine((value) => Math.abs(value) <= LARGEST, {
    error: (issue) => `${String(issue.input)} is beyond anything an aircraft has`,
  });

/** A finite number within reason. */
export const figure = plainNumber;

/** `<key of documents> <section>`, such as `TDR 2.1`. */
export const sourceReference = z
  .string({ error: 'a source is missing: name the document and its section, such as "TDR 2.1"' })
  .regex(/^\S+ \S.*$/, { error: 'a source is a document and a section, such as "TDR 2.1"' });

const unitOf = (unit: string) =>
  z.literal(unit, { error: (issue) => `the unit is ${unit} here, not ${shown(issue.input)}` });

/** One figure with its unit and source. */
export const quantity = (unit: string) =>
  z.strictObject({ value: figure, unit: unitOf(unit), source: sourceReference, note: z.string().optional() });

const rising = (name: string) =>
  z
    .array(figure)
    .min(2, { error: `${name} needs two points or more` })
    .max(500)
    .superRefine((points, context) => {
      const slip = points.findIndex((point, i) => i > 0 && !(point > points[i - 1]!));
      if (slip > 0) {
        const message = `${name} must rise: ${points[slip]} comes after ${points[slip - 1]}`;
        context.addIssue({ code: 'custom', path: [slip], message });
      }
    });

export const GAP = 'the table has a gap';
const cell = z
  .number({ error: ({ input }) => (input === null ? GAP : `a number is expected, not ${shown(input)}`) })
  .refine((value) => Math.abs(value) <= LARGEST, {
    error: (issue) => `${String(issue.input)} is beyond anything an aircraft has`,
  });

function sameLength(
  gives: readonly number[],
  at: readonly number[],
  context: z.RefinementCtx,
  path: (string | number)[],
): void {
  if (gives.length === at.length) return;
  const message = `the table has ${at.length} points and ${gives.length} values`;
  context.addIssue({ code: 'custom', path, message });
}

const constantRule = z.strictObject({ kind: z.literal('constant'), value: figure });

/** Linear between the points; outside them there is no value, and whoever asks is told so. */
const tableRule = z
  .strictObject({
    kind: z.literal('table'),
    by: z.string().min(1),
    interpolation: z.literal('linear'),
    at: rising('at'),
    gives: z.array(cell),
  })
  .superRefine((table, context) => sameLength(table.gives, table.at, context, ['gives']));

const table2Rule = z
  .strictObject({
    kind: z.literal('table2'),
    by: z.tuple([z.string().min(1), z.string().min(1)]),
    interpolation: z.literal('bilinear'),
    at: rising('at'),
    across: rising('across'),
    gives: z.array(z.array(cell)),
  })
  .superRefine((table, context) => {
    if (table.gives.length !== table.at.length) {
      const message = `the table has ${table.at.length} lines by its first variable and ${table.gives.length} lines of values`;
      context.addIssue({ code: 'custom', path: ['gives'], message });
    }
    for (const [i, row] of table.gives.entries()) sameLength(row, table.across, context, ['gives', i]);
  });

const formulaRule = z.strictObject({ kind: z.literal('formula'), text: z.string().min(1).max(1_000) });

/** How a figure is found: it is constant, stands in a table of one or two variables, or follows a formula. */
export const rule = z.discriminatedUnion('kind', [constantRule, tableRule, table2Rule, formulaRule], {
  error: 'a rule is of kind constant, table, table2 or formula',
});
export type ValueRule = z.infer<typeof rule>;

function shown(input: unknown): string {
  if (input === undefined) return 'nothing';
  if (typeof input === 'string') return `"${input.length > 40 ? `${input.slice(0, 40)}…` : input}"`;
  return input === null ? 'nothing' : String(input);
}
