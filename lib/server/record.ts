// The record, read: a list, the answers to an auditor's first questions, a check of the chain, the whole as a file.
import { type Entry, readEntry } from '../approval/entry.ts';
import { type Verified as Chain, verify } from '../approval/verify.ts';
import { assert } from '../base/assert.ts';
import type { Tx } from './db.ts';
import { namesOf } from './names.ts';
import { permit } from './permit.ts';
import { sha256Hex } from './sha256.ts';
import { type Answered, type Viewer, within } from './within.ts';

export { type InForceAnswer, inForceAt } from './audit.ts';

export type RecordLine = {
  readonly seq: number;
  readonly at: string;
  readonly by: string;
  readonly act: string;
  readonly subject: string;
  /** The entry's own data, as recorded. */
  readonly body: Readonly<Record<string, unknown>>;
  readonly hash: string;
};

export type RecordFilter = {
  readonly act?: string;
  readonly personId?: string;
  /** Id of a procedure, draft, candidate, tail or person. */
  readonly subject?: string;
  readonly from?: string;
  readonly until?: string;
  /** Entries before this one: the next page. */
  readonly before?: number;
};

export type RecordPage = {
  readonly lines: readonly RecordLine[];
  readonly more: boolean;
  readonly acts: readonly string[];
  readonly people: readonly { readonly id: string; readonly name: string }[];
};

/** `issues`: signed texts whose stored content was hashed again and is what was signed. */
export type Verified = (Chain & { readonly ok: true; readonly issues: number }) | (Chain & { readonly ok: false });

const PAGE = 100;

export function readRecord(viewer: Viewer, filter: RecordFilter): Answered<RecordPage> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read record');
    const { operatorId } = standing;
    const rows = await tx.recordEntry.findMany({
      where: {
        operatorId,
        act: filter.act,
        personId: filter.personId,
        subject: filter.subject,
        seq: filter.before === undefined ? undefined : { lt: filter.before },
        at: {
          gte: filter.from === undefined ? undefined : new Date(filter.from),
          lt: filter.until === undefined ? undefined : new Date(filter.until),
        },
      },
      orderBy: { seq: 'desc' },
      take: PAGE + 1,
    });
    const acts = await tx.recordEntry.findMany({ where: { operatorId }, distinct: ['act'], select: { act: true } });
    const actors = await tx.recordEntry.findMany({
      where: { operatorId, personId: { not: null } },
      distinct: ['personId'],
      select: { personId: true },
    });
    const nameOf = await namesOf(
      tx,
      actors.map((actor) => actor.personId),
    );
    return {
      lines: rows.slice(0, PAGE).map((row) => ({
        seq: row.seq,
        at: row.at.toISOString(),
        by: nameOf(row.personId),
        act: row.act,
        subject: row.subject,
        body: bodyOf(row.body),
        hash: row.hash,
      })),
      more: rows.length > PAGE,
      acts: acts.map((row) => row.act).sort(),
      people: actors.map((actor) => ({ id: actor.personId!, name: nameOf(actor.personId) })),
    };
  });
}

function bodyOf(text: string): Entry['body'] {
  const entry = readEntry(text);
  return entry.ok ? entry.value.body : { unreadable: entry.error };
}

/** Follows the chain from its start, compares every column with the sealed text, and hashes every signed content again. */
export function verifyRecord(viewer: Viewer): Answered<Verified> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read record');
    const { operatorId } = standing;
    const rows = await tx.recordEntry.findMany({ where: { operatorId }, orderBy: { seq: 'asc' } });
    const chain = verify(operatorId, rows, sha256Hex);
    if (!chain.ok) return chain;
    const broken = (seq: number, because: string): Verified => ({
      ok: false,
      entries: rows.length,
      brokenAt: seq,
      because,
    });
    for (const row of rows) {
      const entry = readEntry(row.body);
      assert(entry.ok, 'a verified entry can be read');
      const { at, by, act, subject } = entry.value;
      const same = at === row.at.toISOString() && by === row.personId && act === row.act && subject === row.subject;
      if (!same) return broken(row.seq, 'a column beside it does not say what was sealed');
    }
    const signed = rows.filter((row) => row.act === 'issue signed');
    for (const row of signed) {
      const why = await contentProblem(tx, operatorId, bodyOf(row.body));
      if (why) return broken(row.seq, why);
    }
    return { ...chain, issues: signed.length };
  });
}

async function contentProblem(tx: Tx, operatorId: string, told: Entry['body']): Promise<string | null> {
  const id = String(told.candidate);
  const candidate = await tx.candidate.findUnique({
    where: { operatorId_id: { operatorId, id } },
    include: { signOffs: { where: { id: String(told.signOff) } } },
  });
  const hash = (text: string) => sha256Hex(new TextEncoder().encode(text));
  if (!candidate) return 'the content that was signed is not there';
  if (hash(candidate.content) !== told.sha256) return 'the stored content is not what was signed';
  const signOff = candidate.signOffs[0];
  if (!signOff || hash(signOff.binds) !== told.bindsSha256) return 'the sign-off is not what was signed';
  return null;
}

/** One line an entry (JSON), which anyone can verify with lib/approval alone. */
export function exportRecord(viewer: Viewer): Answered<{ name: string; text: string }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read record');
    const { operatorId, at } = standing;
    const rows = await tx.recordEntry.findMany({
      where: { operatorId },
      orderBy: { seq: 'asc' },
      select: { seq: true, body: true, previous: true, hash: true },
    });
    const name = `record-${at.toISOString().slice(0, 10)}.jsonl`;
    return { name, text: rows.map((row) => `${JSON.stringify(row)}\n`).join('') };
  });
}
