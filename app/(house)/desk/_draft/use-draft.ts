'use client';
// The open draft for React. Each hook draws again only when what it reads has changed: a key in one step draws one row.
import {
  createContext,
  type RefObject,
  use,
  useCallback,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
} from 'react';
import { type Holder, textOf } from '../../../../lib/document/model.ts';
import type { Reading } from '../../../../lib/document/read.ts';
import type { Presence } from '../../../../lib/document/wire.ts';
import type { Branch, Procedure, Step } from '../../../../lib/procedure/procedure.ts';
import { bindText } from './bind-text.ts';
import { Choice } from './choose-steps.ts';
import { connectDraft, type DraftConnection, type SaveState } from './connect.ts';
import { DraftView, type Order } from './draft-view.ts';
import { Peers } from './peers.ts';

export type OpenDraft = DraftConnection & { readonly view: DraftView; readonly choice: Choice; readonly peers: Peers };

export const DraftContext = createContext<OpenDraft | null>(null);

/** The draft that the page has open; misuse outside of one throws. */
export function useDraft(): OpenDraft {
  const draft = use(DraftContext);
  if (!draft) throw new Error('useDraft is called below a DraftContext');
  return draft;
}

/** Opens the draft for as long as the page stands; null on the server and for the first moment. */
export function useOpenDraft(draftId: string, person: Presence['person'], url = socketUrl()): OpenDraft | null {
  const [open, setOpen] = useState<OpenDraft | null>(null);
  const { id, name, initials } = person;
  useEffect(() => {
    const made = connectDraft({ url, draftId, person: { id, name, initials }, shelf: localStorage });
    const view = new DraftView(made.doc);
    const peers = new Peers(made.provider.awareness!);
    setOpen({ ...made, view, peers, choice: new Choice(view, made.hand) });
    return () => {
      setOpen(null);
      peers.close();
      view.close();
      made.close();
    };
  }, [url, draftId, id, name, initials]);
  return open;
}

function socketUrl(): string {
  if (typeof location === 'undefined') return '';
  return `${location.protocol === 'https:' ? 'wss:' : 'ws:'}//${location.host}/collab`;
}

function useView<T>(what: string, read: (view: DraftView) => T): T {
  const { view } = useDraft();
  const subscribe = useCallback((told: () => void) => view.subscribe(what, told), [view, what]);
  const get = () => read(view);
  return useSyncExternalStore(subscribe, get, get);
}

/** undefined only for an id that the draft never had. Removed steps can still be read. */
export const useStep = (id: string): Step | undefined => useView(`steps/${id}`, (view) => view.step(id));
export const useBranch = (id: string): Omit<Branch, 'steps'> | undefined =>
  useView(`branches/${id}`, (view) => view.branch(id));
export const useOrder = (): Order => useView('order', (view) => view.order());
export const useMeta = (): Omit<Procedure, 'steps' | 'branches'> => useView('meta', (view) => view.meta());
/** Draws again at every key: for what reads the whole text, such as the checks; give it to `useDeferredValue`. */
export const useWhole = (): Reading => useView('whole', (view) => view.whole());

export function useSaved(): SaveState {
  const { onSaved, saved } = useDraft();
  return useSyncExternalStore(onSaved, saved, saved);
}

/** The others in this draft, each once for each of their tabs. */
export function usePeers() {
  const { peers } = useDraft();
  return useSyncExternalStore(peers.subscribe, peers.others, peers.others);
}
/** The others whose caret is in this row. The same array until one of them comes, goes or moves to another field. */
export function usePeersAt(row: string) {
  const { peers } = useDraft();
  const get = () => peers.at(row);
  return useSyncExternalStore(peers.subscribe, get, get);
}

export function useChosen(): ReadonlySet<string> {
  const { choice } = useDraft();
  return useSyncExternalStore(choice.subscribe, choice.ids, choice.ids);
}

export function useHistory() {
  const { history } = useDraft();
  const canUndo = useSyncExternalStore(
    history.subscribe,
    () => history.canUndo,
    () => false,
  );
  const canRedo = useSyncExternalStore(
    history.subscribe,
    () => history.canRedo,
    () => false,
  );
  return useMemo(() => ({ undo: history.undo, redo: history.redo, canUndo, canRedo }), [history, canUndo, canRedo]);
}

/** Ctrl+Z and the browser's own undo, for the whole editor: the browser doesn't know what this person did. */
export function useUndoKeys(frame: RefObject<HTMLElement | null>): void {
  const { history } = useDraft();
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const off = new AbortController();
    const options = { signal: off.signal, capture: true };
    const act = (event: Event, deed: 'undo' | 'redo') => {
      event.preventDefault();
      event.stopPropagation();
      history[deed]();
    };
    element.addEventListener(
      'keydown',
      (event) => {
        if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
        const key = event.key.toLowerCase();
        if (key === 'z') act(event, event.shiftKey ? 'redo' : 'undo');
        else if (key === 'y') act(event, 'redo');
      },
      options,
    );
    element.addEventListener(
      'beforeinput',
      (event) => {
        if (event.inputType === 'historyUndo') act(event, 'undo');
        else if (event.inputType === 'historyRedo') act(event, 'redo');
      },
      options,
    );
    return () => off.abort();
  }, [frame, history]);
}

/**
 * Binds an empty contenteditable="plaintext-only" element to one wording. React must never write its children. Gives the ref;
 * the cell is left alone (make it read-only) where the draft has no such wording.
 */
export function useCell<T extends HTMLElement>(holder: Holder, key: string, refused?: (sentence: string) => void) {
  const ref = useRef<T>(null);
  const { doc, hand, point } = useDraft();
  const row = holder.in === 'meta' ? 'meta' : holder.id;
  const list = holder.in;
  const tell = useRef(refused);
  tell.current = refused;
  useLayoutEffect(() => {
    const text = textOf(doc, list === 'meta' ? { in: 'meta' } : { in: list, id: row }, key);
    if (!ref.current || !text) return;
    return bindText(ref.current, text, {
      words: hand.words,
      refused: (sentence) => tell.current?.(sentence),
      caret: (caret) => point(caret === null ? null : { row, field: key, caret }),
    });
  }, [doc, hand, point, list, row, key]);
  return ref;
}
