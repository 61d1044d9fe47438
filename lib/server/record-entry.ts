// The one way into the record: an entry is written in the transaction of the act that it tells of.
import { seal } from '../approval/chain.ts';
import { canonicalText } from '../base/canonical.ts';
import type { Tx } from './db.ts';
import { sha256Hex } from './sha256.ts';

export type Writer = { readonly operatorId: string; readonly personId: string | null; readonly at: Date };

/**
 * `subject`: the id that the entry is found by. `body`: what else must be known later; people in it are ids, never names.
 * One writer an operator at a time: the chain has one next place.
 */
export async function enter(
  tx: Tx,
  writer: Writer,
  act: string,
  subject: string,
  body: Readonly<Record<string, unknown>>,
): Promise<void> {
  const { operatorId, personId, at } = writer;
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${operatorId}, 2))`;
  const last = await tx.recordEntry.findFirst({
    where: { operatorId },
    orderBy: { seq: 'desc' },
    select: { seq: true, hash: true },
  });
  const entry = { log: operatorId, at: at.toISOString(), by: personId, act, subject, body };
  const sealed = seal(last, canonicalText(entry), sha256Hex);
  await tx.recordEntry.create({ data: { operatorId, at, personId, act, subject, ...sealed }, select: { seq: true } });
}
