// A second server process in a test: hears what the database tells, and answers whether a viewer still stands.

import { setClock } from '../../lib/server/clock.ts';
import { closeDatabase } from '../../lib/server/db.ts';
import { listen } from '../../lib/server/revocation.ts';
import { stillSignedIn } from '../../lib/server/viewer.ts';
import type { Viewer } from '../../lib/server/within.ts';

setClock(() => new Date('2030-01-01T09:00:00Z'));
const tell = (channel: string, payload: string) => process.send?.({ channel, payload });
const stop = await listen(tell);
process.on('message', async (viewer: Viewer) => {
  tell('stands', String(await stillSignedIn(viewer)));
});
process.on('disconnect', async () => {
  await stop();
  await closeDatabase();
});
tell('ready', '');
