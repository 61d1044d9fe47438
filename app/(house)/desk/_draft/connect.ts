// One person's tab at one draft: the document, the hand that writes, the undo, the way to the server, and how far the
// database has it. No screen in here; use-draft.ts gives it to React.
import { HocuspocusProvider, HocuspocusProviderWebsocket } from '@hocuspocus/provider';
import * as Y from 'yjs';
import { History } from '../../../../lib/document/history.ts';
import type { Hand } from '../../../../lib/document/model.ts';
import { CLOSED, type Presence, readServerSays, SENTENCES, write } from '../../../../lib/document/wire.ts';
import { type Shelf, Unsent } from './unsent.ts';

export type SaveState =
  | { readonly kind: 'opening' }
  /** `waiting`: edits that the database has not yet. */
  | { readonly kind: 'saving'; readonly waiting: number }
  /** `at` as ISO 8601, the server's time; null when nothing was written since the draft was opened. */
  | { readonly kind: 'saved'; readonly at: string | null }
  /** `roomy` false: this browser has no room, the edits live in this tab alone. */
  | { readonly kind: 'offline'; readonly kept: number; readonly roomy: boolean }
  | { readonly kind: 'read-only' }
  | { readonly kind: 'frozen'; readonly next: string | null; readonly kept: number; readonly sentence: string }
  | { readonly kind: 'signed-out' | 'no-access' | 'refused'; readonly kept: number; readonly sentence: string };

export type DraftConnection = {
  readonly doc: Y.Doc;
  readonly hand: Hand;
  readonly history: History;
  readonly provider: HocuspocusProvider;
  /** Where the others are; set what this person shows with `point`. */
  readonly point: (at: Presence['at']) => void;
  readonly saved: () => SaveState;
  readonly onSaved: (told: () => void) => () => void;
  /** After signing in again, or when the person asks. */
  readonly tryAgain: () => void;
  /** Throws away what this browser kept, when the person says so: a refused edit would be sent and refused again. */
  readonly discard: () => void;
  readonly close: () => void;
};

type Options = {
  readonly url: string;
  readonly draftId: string;
  readonly person: Presence['person'];
  readonly shelf: Shelf;
  /** For tests outside a browser. */
  readonly WebSocketPolyfill?: unknown;
};

/** Keys are gathered this long before they are sent, in milliseconds, or until the database has what was sent before. */
const GATHER = 20;
/** The provider's own clock for sending; far longer, for this file says when. */
const PROVIDER_CLOCK = 10_000;
const KEPT = 'kept in this browser';
const STOPS: Readonly<Record<number, 'signed-out' | 'no-access' | 'refused'>> = {
  [CLOSED.revoked]: 'signed-out',
  [CLOSED.notAllowed]: 'no-access',
  [CLOSED.tooLarge]: 'refused',
  [CLOSED.full]: 'refused',
  [CLOSED.broken]: 'refused',
};
const WHY: Readonly<Record<number, string>> = {
  [CLOSED.revoked]: SENTENCES.revoked,
  [CLOSED.notAllowed]: SENTENCES.notAllowed,
  [CLOSED.tooLarge]: SENTENCES.tooLarge,
  [CLOSED.full]: SENTENCES.full,
  [CLOSED.broken]: SENTENCES.broken,
};

export function connectDraft({ url, draftId, person, shelf, WebSocketPolyfill }: Options): DraftConnection {
  const doc = new Y.Doc();
  const hand: Hand = {
    words: { by: person.id, what: 'words' },
    keys: { by: person.id, what: 'keys' },
    chance: Math.random,
    newId: () => crypto.randomUUID(),
  };
  const history = new History(doc, hand);
  const unsent = new Unsent(shelf, person.id, draftId, crypto.randomUUID());
  for (const update of unsent.adopt()) Y.applyUpdate(doc, update, KEPT);

  const told = new Set<() => void>();
  let state: SaveState = { kind: 'opening' };
  let [readOnly, stopped] = [false, false];
  let timer: ReturnType<typeof setTimeout> | undefined;
  /** Whether the server was asked for something that it has not answered. */
  let asked = false;
  const settle = (next: SaveState) => {
    if (JSON.stringify(next) === JSON.stringify(state)) return;
    state = next;
    for (const tell of told) tell();
  };
  const offline = () => settle({ kind: 'offline', kept: unsent.count, roomy: unsent.roomy });

  const socket = new HocuspocusProviderWebsocket({
    url,
    // Soon again and not all at once; it waits longer each time, up to three seconds.
    delay: 400,
    minDelay: 200,
    factor: 1.5,
    maxDelay: 3_000,
    // Told here, not by the provider: the socket's own plan to come back is made between the two.
    onClose: ({ event }: { event: { code: number } }) => {
      const kind = STOPS[event.code];
      asked = false;
      if (stopped) return;
      if (kind) stop({ kind, kept: unsent.count, sentence: WHY[event.code]! });
      else offline();
    },
    ...(WebSocketPolyfill ? { WebSocketPolyfill } : {}),
  });
  const stop = (next: SaveState) => {
    stopped = true;
    socket.disconnect();
    settle(next);
  };
  const provider = new HocuspocusProvider({
    websocketProvider: socket,
    name: draftId,
    document: doc,
    flushDelay: PROVIDER_CLOCK,
  });

  const send = () => {
    clearTimeout(timer);
    timer = undefined;
    if (asked || stopped || !provider.isSynced) return;
    provider.flushPendingUpdates();
    if (readOnly || unsent.count === 0) return;
    asked = true;
    provider.sendStateless(write({ kind: 'fence', upTo: unsent.last }));
  };
  const sendSoon = () => {
    if (!asked) timer ??= setTimeout(send, GATHER);
  };
  doc.on('update', (update: Uint8Array, origin: unknown) => {
    if (origin === provider || origin === KEPT) return;
    unsent.add(update);
    if (stopped) settle({ ...state, kept: unsent.count } as SaveState);
    else if (!provider.isSynced) offline();
    else {
      settle({ kind: 'saving', waiting: unsent.count });
      sendSoon();
    }
  });
  provider.awareness?.on('update', (_: unknown, origin: unknown) => {
    if (origin !== provider) sendSoon();
  });
  provider.on('authenticated', ({ scope }: { scope: string }) => {
    readOnly = scope === 'readonly';
  });
  provider.on('authenticationFailed', ({ reason }: { reason: string }) => {
    const out = reason === 'signed-out';
    const sentence = out ? SENTENCES.revoked : SENTENCES.notAllowed;
    stop({ kind: out ? 'signed-out' : 'no-access', kept: unsent.count, sentence });
  });
  provider.on('synced', () => {
    if (stopped) return;
    asked = false;
    if (readOnly) settle({ kind: 'read-only' });
    else settle(unsent.count === 0 ? { kind: 'saved', at: null } : { kind: 'saving', waiting: unsent.count });
    // What this browser kept went out with the handshake; the fence behind it tells when it is in the database.
    send();
  });
  provider.on('stateless', ({ payload }: { payload: string }) => {
    const says = readServerSays(payload);
    if (says?.kind === 'saved') {
      asked = false;
      unsent.drop(says.upTo);
      if (stopped) settle({ ...state, kept: unsent.count } as SaveState);
      else settle(unsent.count === 0 ? { kind: 'saved', at: says.at } : { kind: 'saving', waiting: unsent.count });
      send();
    } else if (says?.kind === 'frozen') {
      readOnly = true;
      stop({ kind: 'frozen', next: says.next, kept: unsent.count, sentence: SENTENCES.frozen });
    }
  });
  provider.setAwarenessField('person', person);
  provider.attach();

  return {
    doc,
    hand,
    history,
    provider,
    point: (at) => provider.setAwarenessField('at', at),
    saved: () => state,
    onSaved: (tell) => {
      told.add(tell);
      return () => told.delete(tell);
    },
    tryAgain: () => {
      if (stopped) settle({ kind: 'opening' });
      stopped = false;
      void socket.connect();
    },
    discard: () => unsent.drop(unsent.last),
    close: () => {
      clearTimeout(timer);
      history.close();
      provider.destroy();
      socket.destroy();
      doc.destroy();
    },
  };
}
