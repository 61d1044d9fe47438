// The live drafts of one operator. Each operator has a room of its own: a draft is found by its id, and an id of one
// operator must mean nothing to another.
import { type Connection, Hocuspocus } from '@hocuspocus/server';
import * as Y from 'yjs';
import { readClientSays, write } from '../document/wire.ts';
import { now } from '../server/clock.ts';
import { openDraft } from '../server/drafts.ts';
import type { Viewer } from '../server/within.ts';
import { admit } from './authenticate.ts';
import { PRESENCE_CHARACTERS } from './limits.ts';
import { append, bringUp, load, readable } from './persist.ts';
import { again, broken, closing, refusal } from './refusal.ts';

/** What a connection to one draft carries. `refused`: a change was not taken over, so no fence behind it is answered. */
export type Context = { readonly viewer: Viewer; refused?: boolean };

/** Kinds of Yjs' sync messages: what a client has beyond us, and a change. The third only asks. */
const [HANDSHAKE, CHANGE] = [1, 2];

export function openRoom(): Hocuspocus<Context> {
  return new Hocuspocus<Context>({
    quiet: true,
    // The journal is written before a change is applied; there is nothing left to store later.
    unloadImmediately: true,
    async onAuthenticate({ context, documentName, connectionConfig }) {
      connectionConfig.readOnly = (await admit(context.viewer, documentName)) === 'read';
    },
    async onLoadDocument({ context, document, documentName, connectionConfig }) {
      await load(context.viewer, documentName, document);
      if (!connectionConfig.readOnly) await bringUp(context.viewer, documentName, document);
    },
    async beforeSync({ connection, document, documentName, type, payload }) {
      if (connection.readOnly || (type !== HANDSHAKE && type !== CHANGE)) return;
      if (!readable(payload)) throw closing(connection, broken);
      if (type === HANDSHAKE && Y.snapshotContainsUpdate(Y.snapshot(document), payload)) return;
      const context = connection.context as Context;
      const committed = await append(context.viewer, documentName, payload).catch((error: unknown) => {
        console.error(`draft ${documentName}: a change could not be committed`, error);
        throw closing(connection, again);
      });
      if (committed.ok) return;
      context.refused = true;
      const says = refusal(committed.error);
      if (says !== 'frozen') throw closing(connection, says);
      await freeze(connection, documentName);
    },
    async onStateless({ connection, payload }) {
      const says = readClientSays(payload);
      const { refused } = connection.context as Context;
      if (!says || refused || connection.readOnly) return;
      connection.sendStateless(write({ kind: 'saved', upTo: says.upTo, at: now().toISOString() }));
    },
    async beforeHandleAwareness({ states, context }) {
      for (const [tab, state] of states) {
        const person = state.person as { id?: unknown } | undefined;
        if (JSON.stringify(state).length > PRESENCE_CHARACTERS) states.delete(tab);
        // Nobody shows another's id.
        else if (person && context) person.id = context.viewer.personId;
      }
    },
  });
}

/** From now on read-only, also for a socket that is open; the browser is told where to go on. */
export async function freeze(connection: Connection, draftId: string): Promise<void> {
  connection.readOnly = true;
  const { viewer } = connection.context as Context;
  const draft = await openDraft(viewer, draftId).catch(() => null);
  connection.sendStateless(write({ kind: 'frozen', next: draft?.ok ? draft.value.nextDraftId : null }));
}
