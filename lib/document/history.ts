// One person's own undo over words, places and chosen values. Words: Y.UndoManager. Values: remembered here, because that
// manager leaves a key EMPTY when two people set it at once and the one whose value won undoes.
import * as Y from 'yjs';
import { fieldsOf, type Hand, type Holder, metaOf, rowsOf } from './model.ts';

type Change = { readonly holder: Holder; readonly key: string; readonly before: unknown; readonly after: unknown };
type Entry = readonly Change[] | 'words';

const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
const LISTS = ['steps', 'branches'] as const;
/** Words typed with no longer pause than this are undone together, in milliseconds. */
const CAPTURE = 500;

export class History {
  /** For the notes editor: `words.addTrackedOrigin(ySyncPluginKey)` and `yUndoOptions: { undoManager: history.words }`. */
  readonly words: Y.UndoManager;
  readonly #doc: Y.Doc;
  readonly #keys: object;
  readonly #told = new Set<() => void>();
  #done: Entry[] = [];
  #undone: Entry[] = [];

  /** Two origins in a hand, so that each change is remembered once: as words, or as values. */
  constructor(doc: Y.Doc, hand: Hand, captureTimeout = CAPTURE) {
    this.#doc = doc;
    this.#keys = hand.keys;
    const scope = [...LISTS.map((list) => rowsOf(doc, list)), metaOf(doc)];
    this.words = new Y.UndoManager(scope, { trackedOrigins: new Set([hand.words]), captureTimeout });
    // An editor destroys the manager it was lent when it is unmounted; this one lives on until `close`.
    this.words.destroy = () => {};
    this.words.on('stack-item-added', ({ origin, type }: { origin: unknown; type: string }) => {
      if (origin !== this.words && type === 'undo') this.#push('words');
    });
    doc.on('afterTransaction', this.#remember);
  }

  #remember = (transaction: Y.Transaction): void => {
    if (transaction.origin !== this.#keys) return;
    const changes: Change[] = [];
    for (const [type, events] of transaction.changedParentTypes) {
      for (const event of events) {
        const holder = event.target === type && event instanceof Y.YMapEvent ? this.#holderOf(event.target) : null;
        if (!holder) continue;
        for (const [key, { oldValue }] of event.changes.keys) {
          changes.push({ holder, key, before: oldValue, after: event.target.get(key) });
        }
      }
    }
    if (changes.length === 0) return;
    this.words.stopCapturing();
    this.words.clear(false, true);
    this.#push(changes);
  };

  #holderOf(target: Y.AbstractType<unknown>): Holder | null {
    if (target === metaOf(this.#doc)) return { in: 'meta' };
    const list = LISTS.find((one) => target.parent === rowsOf(this.#doc, one));
    const id = target._item?.parentSub;
    return list && id ? { in: list, id } : null;
  }

  #push(entry: Entry): void {
    this.#done.push(entry);
    this.#undone = [];
    this.#tell();
  }

  get canUndo(): boolean {
    return this.#done.length > 0;
  }
  get canRedo(): boolean {
    return this.#undone.length > 0;
  }

  /** Calls back when there is more or less to undo. Returns how to stop it. */
  subscribe = (told: () => void): (() => void) => {
    this.#told.add(told);
    return () => this.#told.delete(told);
  };
  #tell(): void {
    for (const told of this.#told) told();
  }

  /** Takes back this person's last act that still stands. False when there is none. */
  undo = (): boolean => this.#step(this.#done, this.#undone, 'before');
  /** Does again what was undone last. */
  redo = (): boolean => this.#step(this.#undone, this.#done, 'after');

  #step(from: Entry[], to: Entry[], put: 'before' | 'after'): boolean {
    const moved = this.#act(from, to, put);
    this.#tell();
    return moved;
  }

  #act(from: Entry[], to: Entry[], put: 'before' | 'after'): boolean {
    for (let entry = from.pop(); entry; entry = from.pop()) {
      if (entry === 'words') {
        const acted = (put === 'before' ? this.words.undo() : this.words.redo()) !== null;
        const left = put === 'before' ? this.words.undoStack : this.words.redoStack;
        // The manager skips items that no longer change anything: forget the same ones.
        for (let n = from.filter((one) => one === 'words').length - left.length; n > 0; n--) {
          from.splice(from.lastIndexOf('words'), 1);
        }
        if (!acted) continue;
        to.push('words');
        return true;
      }
      // Only what still stands as this person left it is put back; a later change by someone else stays.
      const was = put === 'before' ? 'after' : 'before';
      const mine = entry.filter((one) => same(fieldsOf(this.#doc, one.holder)?.get(one.key), one[was]));
      if (mine.length === 0) continue;
      this.#doc.transact(() => {
        for (const one of mine) fieldsOf(this.#doc, one.holder)?.set(one.key, one[put]);
      }, this);
      to.push(mine);
      return true;
    }
    return false;
  }

  close(): void {
    this.#doc.off('afterTransaction', this.#remember);
    Y.UndoManager.prototype.destroy.call(this.words);
    this.#told.clear();
  }
}
