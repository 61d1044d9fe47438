// Three people at one draft, each with an own replica: what one of them may do, drawn at random from a seed.
import * as Y from 'yjs';
import {
  addBranch,
  insertRows,
  move,
  nudge,
  pasteSteps,
  remove,
  restore,
  setField,
  setText,
} from '../../lib/document/edit.ts';
import { History } from '../../lib/document/history.ts';
import { type Hand, rowsOf, STEP_TEXTS, textOf } from '../../lib/document/model.ts';
import { ordered, orderedSteps } from '../../lib/document/order.ts';
import { ROLES } from '../../lib/procedure/procedure.ts';

export function mulberry(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Every character that is typed in a run is another one, so that each can be found again. */
export type Ledger = {
  typed: Map<string, { step: string; field: string; by: string }>;
  /** Cut on purpose by someone, or taken back by the one who typed it. */
  waived: Set<string>;
  next: number;
};
export const newLedger = (): Ledger => ({ typed: new Map(), waived: new Set(), next: 0x4e00 });

export class Writer {
  readonly doc = new Y.Doc();
  readonly hand: Hand;
  readonly history: History;
  readonly #chance: () => number;
  readonly #ledger: Ledger;
  readonly #name: string;
  #made = 0;

  constructor(name: string, start: Uint8Array, chance: () => number, ledger: Ledger) {
    this.#name = name;
    this.#chance = chance;
    this.#ledger = ledger;
    this.doc.clientID = Math.floor(chance() * 2 ** 31);
    Y.applyUpdate(this.doc, start);
    this.hand = { words: { name }, keys: { name }, chance, newId: () => `${name}${this.#made++}` };
    this.history = new History(this.doc, this.hand, 0);
  }

  #pick<T>(from: readonly T[]): T | undefined {
    return from[Math.floor(this.#chance() * from.length)];
  }
  #steps = () => orderedSteps(this.doc).map((one) => one.id);
  #word(step: string, field: string): string {
    const letters = Array.from({ length: 1 + Math.floor(this.#chance() * 6) }, () => {
      const letter = String.fromCharCode(this.#ledger.next++);
      this.#ledger.typed.set(letter, { step, field, by: this.#name });
      return letter;
    });
    return letters.join('');
  }
  #spot() {
    const parent = this.#pick([null, null, ...ordered(this.doc, 'branches')]) ?? null;
    return { parent, after: this.#pick([null, ...ordered(this.doc, 'steps', parent)]) ?? null };
  }

  type() {
    const [id, field] = [this.#pick(this.#steps()), this.#pick(STEP_TEXTS)!];
    if (!id) return;
    const at = Math.floor(this.#chance() * (textOf(this.doc, { in: 'steps', id }, field)!.length + 1));
    setText(this.doc, this.hand, { in: 'steps', id }, field, at, 0, this.#word(id, field));
  }
  cut() {
    const full = this.#steps().flatMap((id) =>
      STEP_TEXTS.map((field) => ({ id, field, text: textOf(this.doc, { in: 'steps', id }, field)!.toString() })),
    );
    const found = this.#pick(full.filter((one) => one.text.length > 0));
    if (!found) return;
    const at = Math.floor(this.#chance() * found.text.length);
    const cut = 1 + Math.floor(this.#chance() * 3);
    for (const letter of found.text.slice(at, at + cut)) this.#ledger.waived.add(letter);
    setText(this.doc, this.hand, { in: 'steps', id: found.id }, found.field, at, cut, '');
  }
  move() {
    const id = this.#pick(this.#steps());
    if (id) move(this.doc, this.hand, 'steps', [id], this.#spot());
  }
  nudge() {
    const id = this.#pick(this.#steps());
    if (id) nudge(this.doc, this.hand, 'steps', [id], this.#chance() < 0.5 ? 1 : -1);
  }
  insert() {
    const [id] = insertRows(this.doc, this.hand, 'steps', [{}], this.#spot());
    setText(this.doc, this.hand, { in: 'steps', id: id! }, 'object', 0, 0, this.#word(id!, 'object'));
  }
  paste() {
    const rows = [0, 1, 2].map((i) => ({
      id: `source${i}`,
      object: this.#word(`${this.#name}${this.#made + i}`, 'object'),
    }));
    pasteSteps(this.doc, this.hand, rows, this.#spot());
  }
  remove() {
    const id = this.#pick(this.#steps());
    if (id) remove(this.doc, this.hand, 'steps', [id]);
  }
  restore() {
    const hidden = [...rowsOf(this.doc, 'steps')].filter(([, fields]) => fields.get('gone')).map(([id]) => id);
    const id = this.#pick(hidden);
    if (id) restore(this.doc, this.hand, 'steps', [id]);
  }
  choose() {
    const id = this.#pick(this.#steps());
    if (id) setField(this.doc, this.hand, { in: 'steps', id }, 'who', this.#pick(ROLES));
  }
  branch() {
    if (ordered(this.doc, 'branches').length < 3) addBranch(this.doc, this.hand, { title: 'Wind shear' });
  }
  removeBranch() {
    const id = this.#pick(ordered(this.doc, 'branches'));
    if (id) remove(this.doc, this.hand, 'branches', [id]);
  }
  undo() {
    this.#back(this.history.undo);
  }
  redo() {
    this.#back(this.history.redo);
  }
  /** What the writer's own undo took away is no loss. */
  #back(act: () => boolean) {
    const before = lettersOf(this.doc);
    act();
    const after = lettersOf(this.doc);
    for (const letter of before.keys()) {
      const own = this.#ledger.typed.get(letter)?.by === this.#name;
      if (own && !after.has(letter)) this.#ledger.waived.add(letter);
    }
  }
}

/** Where each letter stands, hidden steps included; more than once if it was doubled. */
export function lettersOf(doc: Y.Doc): Map<string, { step: string; field: string }[]> {
  const found = new Map<string, { step: string; field: string }[]>();
  for (const [step, fields] of rowsOf(doc, 'steps')) {
    for (const field of STEP_TEXTS) {
      for (const letter of (fields.get(field) as Y.Text).toString()) {
        if (letter >= '\u4e00') found.set(letter, [...(found.get(letter) ?? []), { step, field }]);
      }
    }
  }
  return found;
}

export const sync = (from: Y.Doc, to: Y.Doc) =>
  Y.applyUpdate(to, Y.encodeStateAsUpdate(from, Y.encodeStateVector(to)), 'sync');
