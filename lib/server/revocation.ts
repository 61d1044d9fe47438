// Ending sessions, in the rows and in every process: open sockets hear of it through the database.
import pg from 'pg';
import { now } from './clock.ts';
import type { Tx } from './db.ts';
import { databaseUrl } from './env.ts';

/** Payload: the session's id. Sent when the transaction commits. */
export const REVOKED = 'cuewright_revoked';
/** Payload: the id of a draft that was closed. */
export const DRAFT_CLOSED = 'cuewright_draft_closed';

export async function tell(tx: Tx, channel: string, payload: string): Promise<void> {
  await tx.$executeRaw`SELECT pg_notify(${channel}, ${payload})`;
}

export async function endSession(tx: Tx, operatorId: string, id: string, because: string): Promise<void> {
  const { count } = await tx.session.updateMany({
    where: { operatorId, id, revokedAt: null },
    data: { revokedAt: now(), revokedBecause: because },
  });
  if (count) await tell(tx, REVOKED, id);
}

/** Ends all open sessions of a person but `except`; gives how many. */
export async function endSessions(
  tx: Tx,
  person: { readonly operatorId: string; readonly personId: string },
  because: string,
  except = '',
): Promise<number> {
  const open = await tx.session.findMany({
    where: { ...person, revokedAt: null, expiresAt: { gt: now() }, id: { not: except } },
    select: { id: true },
  });
  for (const { id } of open) await endSession(tx, person.operatorId, id, because);
  return open.length;
}

export type Heard = (channel: string, payload: string) => void;

/**
 * Listens for revoked sessions and closed drafts on a connection of its own, which is made again when it is lost. After a
 * gap `heard` is told `('gap', '')`: what was said meanwhile is unknown, so ask the rows. Gives the deed that ends it.
 */
export async function listen(
  heard: Heard,
  channels: readonly string[] = [REVOKED, DRAFT_CLOSED],
): Promise<() => Promise<void>> {
  let ended = false;
  let client: pg.Client | undefined;
  let retry: NodeJS.Timeout | undefined;
  const open = async (): Promise<void> => {
    client = new pg.Client({ connectionString: databaseUrl() });
    client.on('notification', ({ channel, payload }) => heard(channel, payload ?? ''));
    client.on('error', () => {});
    client.on('end', () => {
      if (!ended) again();
    });
    await client.connect();
    for (const channel of channels) await client.query(`LISTEN ${pg.escapeIdentifier(channel)}`);
  };
  const again = (): void => {
    if (ended || retry) return;
    retry = setTimeout(() => {
      retry = undefined;
      open().then(
        () => heard('gap', ''),
        () => again(),
      );
    }, 250);
  };
  await open();
  return async () => {
    ended = true;
    clearTimeout(retry);
    await client?.end();
  };
}
