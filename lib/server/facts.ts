// What the checks are given: the newest revision of the type's sheet, the newest policy, the library and the operator's
// other procedures; and the answers so far.
import { readSheet, type Sheet } from '../aircraft/sheet.ts';
import type { Answer } from '../check/answer.ts';
import type { Facts as CheckFacts } from '../check/facts.ts';
import type { Policy } from '../policy/policy.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import { governanceFor } from './governance.ts';
import { fleetOf, type Heard, libraryOf, othersOf } from './library-facts.ts';
import { namesOf } from './names.ts';
import type { Standing } from './permit.ts';

export type Facts = Pick<CheckFacts, 'library' | 'others' | 'fleet' | 'governance'> & {
  readonly sheet: Sheet | null;
  readonly sheetRow: { readonly id: string; readonly revision: string; readonly content: unknown } | null;
  readonly policy: Policy | null;
  readonly policyVersion: number | null;
};

/** For the procedure, as the operator's tables stand at this moment of the transaction. */
export async function factsFor(
  tx: Tx,
  { operatorId, at }: Pick<Standing, 'operatorId' | 'at'>,
  procedure: Procedure,
  least: Heard = 'drafted',
): Promise<Facts> {
  const { id, effectivity } = procedure;
  const { type } = effectivity;
  const row = await tx.sheetRevision.findFirst({ where: { operatorId, type }, orderBy: { importedAt: 'desc' } });
  const content: unknown = row ? JSON.parse(row.content) : null;
  const sheet = row ? readSheet(content) : null;
  const policy = await tx.policyVersion.findFirst({ where: { operatorId }, orderBy: { version: 'desc' } });
  return {
    sheet: sheet?.ok ? sheet.value : null,
    sheetRow: row && { id: row.id, revision: row.revision, content },
    policy: policy ? (JSON.parse(policy.content) as Policy) : null,
    policyVersion: policy?.version ?? null,
    library: await libraryOf(tx, operatorId),
    others: await othersOf(tx, operatorId, id, at, least),
    fleet: await fleetOf(tx, operatorId, type),
    governance: await governanceFor(tx, { operatorId, at }, procedure),
  };
}

/** An answer or waiver with what a screen says about it. `by` is an id, `byName` a name; `until` a day. */
export type Settled = Answer & {
  readonly id: string;
  readonly message: string;
  readonly byName: string;
  readonly settledAt: string;
};

type Row = Awaited<ReturnType<Tx['findingAnswer']['findMany']>>[number];
export const day = (date: Date): string => date.toISOString().slice(0, 10);

export function settled(row: Row, nameOf: (id: string) => string): Settled {
  return {
    id: row.id,
    kind: row.kind as Settled['kind'],
    check: row.check,
    at: { step: row.stepId, field: row.field },
    read: row.read,
    reason: row.reason,
    by: row.personId,
    on: day(row.at),
    until: row.until && day(row.until),
    message: row.message,
    byName: nameOf(row.personId),
    settledAt: row.at.toISOString(),
  };
}

/** All answers of a procedure, newest first, so that the newest one stands. */
export async function settledOf(tx: Tx, operatorId: string, procedureId: string): Promise<Settled[]> {
  const rows = await tx.findingAnswer.findMany({ where: { operatorId, procedureId }, orderBy: { at: 'desc' } });
  const nameOf = await namesOf(
    tx,
    rows.map((row) => row.personId),
  );
  return rows.map((row) => settled(row, nameOf));
}
