import { fork } from 'node:child_process';
import { once } from 'node:events';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { setRoles } from '../../lib/server/people.ts';
import { DRAFT_CLOSED, REVOKED } from '../../lib/server/revocation.ts';
import { signIn, signOut } from '../../lib/server/sign-in.ts';
import { submitDraft } from '../../lib/server/submission.ts';
import { type House, importDraft, must, openHouse, PASSWORD } from './house.ts';

let house: House;
beforeAll(async () => {
  house = await openHouse();
});
afterAll(() => house.close());

type Heard = { channel: string; payload: string };

/** Another process with another pool, which tells what it hears and whether a session stands there. */
async function otherProcess() {
  const child = fork(new URL('./other-process.ts', import.meta.url), { env: process.env, execArgv: [] });
  const next = async (): Promise<Heard> => (await once(child, 'message'))[0];
  expect(await next()).toEqual({ channel: 'ready', payload: '' });
  return { child, next };
}

test('sign-out, changed roles and a closed draft are heard by another process within a second', async () => {
  const { administrator, drafter } = house.people;
  const { draftId } = await importDraft(drafter);
  const line = await must(signIn('line', PASSWORD));
  const trainer = await must(signIn('trainer', PASSWORD));
  const other = await otherProcess();
  const timed = async (deed: () => Promise<unknown>): Promise<Heard> => {
    const heard = other.next();
    await deed();
    const committed = performance.now();
    const told = await heard;
    expect(performance.now() - committed).toBeLessThan(1_000);
    return told;
  };
  try {
    const signedOut = await timed(() => signOut(line));
    expect(signedOut).toEqual({ channel: REVOKED, payload: line.sessionId });
    other.child.send(line);
    expect(await other.next()).toEqual({ channel: 'stands', payload: 'false' });
    other.child.send(trainer);
    expect(await other.next()).toEqual({ channel: 'stands', payload: 'true' });

    const sessions = new Set([trainer.sessionId, house.people.trainer.sessionId]);
    const changed = await timed(() => must(setRoles(administrator, trainer.personId, ['line pilot'])));
    expect(changed.channel).toBe(REVOKED);
    expect(sessions).toContain(changed.payload);

    const closed = other.next();
    await must(submitDraft(drafter, draftId, ''));
    // The second session of the trainer may still be on its way.
    const told = await closed;
    const last = told.channel === DRAFT_CLOSED ? told : await other.next();
    expect(last).toEqual({ channel: DRAFT_CLOSED, payload: draftId });
  } finally {
    other.child.disconnect();
    await once(other.child, 'exit');
  }
});
