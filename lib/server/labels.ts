// Labels such as `GA-07`: given when a step is first signed, never used again for another step.
import { allSteps, type Procedure, type Step } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';

export type Labels = Readonly<Record<string, string>>;

/** Labels of all steps of the procedure that were ever signed, by step id. */
export async function labelsOf(tx: Tx, operatorId: string, procedureId: string): Promise<Labels> {
  const rows = await tx.stepLabel.findMany({ where: { operatorId, procedureId } });
  return Object.fromEntries(rows.map((row) => [row.stepId, row.label]));
}

/** The procedure with its steps' labels filled in where the text has none. */
export function withLabels(procedure: Procedure, labels: Labels): Procedure {
  const label = (step: Step): Step =>
    step.label === '' && labels[step.id] ? { ...step, label: labels[step.id]! } : step;
  return {
    ...procedure,
    steps: procedure.steps.map(label),
    branches: procedure.branches.map((branch) => ({ ...branch, steps: branch.steps.map(label) })),
  };
}

/** Refuses labels that stand twice in the text, or that belong to another step. */
export async function refuseTakenLabels(tx: Tx, operatorId: string, procedure: Procedure): Promise<void> {
  const labelled = allSteps(procedure).filter((step) => step.label !== '');
  const known = await tx.stepLabel.findMany({
    where: { operatorId, OR: [{ label: { in: labelled.map((step) => step.label) } }, { procedureId: procedure.id }] },
  });
  const owner = new Map(known.map((row) => [row.label, `${row.procedureId} ${row.stepId}`]));
  const given = new Map(known.filter((row) => row.procedureId === procedure.id).map((row) => [row.stepId, row.label]));
  const seen = new Set<string>();
  const wrong = labelled.filter((step) => {
    const taken = (owner.get(step.label) ?? `${procedure.id} ${step.id}`) !== `${procedure.id} ${step.id}`;
    const other = (given.get(step.id) ?? step.label) !== step.label;
    const twice = seen.has(step.label);
    seen.add(step.label);
    return taken || other || twice;
  });
  if (wrong.length > 0)
    throw new Refused(
      'label-taken',
      wrong.map((step) => step.label),
    );
}

const PREFIX = /^(.+)-\d+$/;

/** Letters that the procedure's labels begin with: those it has, else the first letters of its title's words. */
function prefixOf(procedure: Procedure, taken: ReadonlySet<string>): string {
  const own = allSteps(procedure)
    .map((step) => PREFIX.exec(step.label)?.[1])
    .find((prefix) => prefix !== undefined);
  if (own) return own;
  const words = procedure.title.toUpperCase().match(/[A-Z]+/g) ?? ['P'];
  const short = words.length > 1 ? words.map((word) => word[0]).join('') : words[0]!;
  const stem = short.slice(0, words.length > 1 ? 3 : 2);
  for (let n = 1; ; n++) {
    const prefix = n === 1 ? stem : `${stem}${n}`;
    if (!taken.has(prefix)) return prefix;
  }
}

export type NewLabels = { readonly prefix: string; readonly given: readonly { step: string; label: string }[] };

/** The labels that signing this content would give: those it carries already, then new ones in reading order. */
export async function labelsToGive(tx: Tx, operatorId: string, procedure: Procedure): Promise<NewLabels> {
  const row = await tx.procedure.findUniqueOrThrow({ where: { operatorId_id: { operatorId, id: procedure.id } } });
  const others = await tx.procedure.findMany({
    where: { operatorId, labelPrefix: { not: null }, id: { not: procedure.id } },
    select: { labelPrefix: true },
  });
  const prefix = row.labelPrefix ?? prefixOf(procedure, new Set(others.map((other) => other.labelPrefix!)));
  const used = await tx.stepLabel.findMany({ where: { operatorId, label: { startsWith: `${prefix}-` } } });
  const known = await labelsOf(tx, operatorId, procedure.id);
  const unknown = allSteps(procedure).filter((step) => known[step.id] === undefined);
  const numbers = [...used.map((label) => label.label), ...unknown.map((step) => step.label)]
    .filter((label) => label.startsWith(`${prefix}-`))
    .map((label) => Number(label.slice(prefix.length + 1)))
    .filter(Number.isInteger);
  let last = Math.max(0, ...numbers);
  const given = unknown.map((step) => ({
    step: step.id as string,
    label: step.label || `${prefix}-${String(++last).padStart(2, '0')}`,
  }));
  return { prefix, given };
}
