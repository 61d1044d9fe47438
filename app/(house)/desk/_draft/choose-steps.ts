// Whole steps: chosen with Shift+Alt+arrows or Shift+click, copied, cut, pasted, removed, moved with Alt+arrows. A text
// selection can't leave its cell, so which steps are chosen is a state of its own, kept by id: a row that others insert in
// between is not taken along.
import { readableText, readClipboard, STEPS_TYPE, writeClipboard } from '../../../../lib/document/clipboard.ts';
import { copyRows, nudge, pasteSteps, remove } from '../../../../lib/document/edit.ts';
import type { Hand } from '../../../../lib/document/model.ts';
import type { DraftView } from './draft-view.ts';

export class Choice {
  readonly #view: DraftView;
  readonly #hand: Hand;
  readonly #told = new Set<() => void>();
  #ids: ReadonlySet<string> = new Set();
  #anchor: string | null = null;
  #head: string | null = null;

  constructor(view: DraftView, hand: Hand) {
    this.#view = view;
    this.#hand = hand;
  }

  subscribe = (told: () => void): (() => void) => {
    this.#told.add(told);
    return () => this.#told.delete(told);
  };
  ids = (): ReadonlySet<string> => this.#ids;
  /** In reading order, those that are still there. */
  chosen = (): string[] => this.#line().filter((id) => this.#ids.has(id));
  #line = (): string[] => this.#view.order().steps.map((one) => one.id);

  pick(from: string | null, to: string | null): void {
    [this.#anchor, this.#head] = [from, to];
    const line = this.#line();
    const [a, b] = [line.indexOf(from ?? ''), line.indexOf(to ?? '')].sort((x, y) => x - y) as [number, number];
    this.#ids = new Set(a < 0 ? [] : line.slice(a, b + 1));
    for (const told of this.#told) told();
  }
  clear = (): void => {
    if (this.#ids.size > 0) this.pick(null, null);
  };
  /** One step further up or down from where the choice ends; it begins at `from`. */
  extend(from: string | null, by: 1 | -1): void {
    const line = this.#line();
    const head = this.#ids.size > 0 ? this.#head : from;
    const next = line[line.indexOf(head ?? '') + by] ?? head;
    this.pick(this.#ids.size > 0 ? this.#anchor : from, next);
  }

  /** The chosen steps, or else the one at `here`, moved one place. */
  nudge(here: string | null, by: 1 | -1): boolean {
    const ids = this.#ids.size > 0 ? this.chosen() : here ? [here] : [];
    return ids.length > 0 && nudge(this.#view.doc, this.#hand, 'steps', ids, by);
  }
  remove(): number {
    const ids = this.chosen();
    remove(this.#view.doc, this.#hand, 'steps', ids);
    this.clear();
    return ids.length;
  }
  /** Puts the chosen steps on the clipboard. False when none is chosen: then the cell's own copy goes on. */
  copy(clipboard: DataTransfer): boolean {
    const rows = copyRows(this.#view.doc, 'steps', this.chosen());
    if (rows.length === 0) return false;
    clipboard.setData(STEPS_TYPE, writeClipboard(rows));
    clipboard.setData('text/plain', readableText(rows));
    return true;
  }
  /** Steps from the clipboard behind the chosen ones or `here`. null: it holds no steps, let the cell paste text. */
  paste(clipboard: DataTransfer, here: string | null): { readonly ids: string[]; readonly refused?: string } | null {
    const text = clipboard.getData(STEPS_TYPE);
    if (!text) return null;
    const rows = readClipboard(text);
    if (!rows.ok) return { ids: [], refused: rows.error };
    const after = this.chosen().at(-1) ?? here;
    const parent = this.#view.order().steps.find((one) => one.id === after)?.parent ?? null;
    return { ids: pasteSteps(this.#view.doc, this.#hand, rows.value, { parent, after }) };
  }
}

export type ChoosingTold = {
  /** Steps were removed or cut: offer them back. */
  readonly removed?: (ids: readonly string[]) => void;
  readonly pasted?: (ids: readonly string[]) => void;
  readonly refused?: (sentence: string) => void;
  /** Alt+arrow moved the row with the caret: put the caret back if the row's element was moved. */
  readonly moved?: (id: string | null) => void;
};

/** Listens on the list of rows (`[data-step]` holds the id) until the returned function is called. */
export function listenForChoice(list: HTMLElement, choice: Choice, told: ChoosingTold = {}): () => void {
  const stepAt = (target: EventTarget | null) =>
    (target as Element | null)?.closest?.<HTMLElement>('[data-step]')?.dataset.step ?? null;
  const off = new AbortController();
  const on = { signal: off.signal };
  const take = (event: Event) => {
    event.preventDefault();
    event.stopPropagation();
  };
  list.addEventListener(
    'keydown',
    (event) => {
      const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : null;
      const here = stepAt(event.target);
      if (by && event.altKey && event.shiftKey) {
        take(event);
        choice.extend(here, by);
      } else if (by && event.altKey) {
        take(event);
        if (choice.nudge(here, by)) told.moved?.(here);
      } else if (event.key === 'Escape') choice.clear();
      else if ((event.key === 'Delete' || event.key === 'Backspace') && choice.ids().size > 0) {
        take(event);
        const ids = choice.chosen();
        choice.remove();
        told.removed?.(ids);
      }
    },
    { ...on, capture: true },
  );
  list.addEventListener(
    'mousedown',
    (event) => {
      const [from, to] = [stepAt(list.ownerDocument.activeElement), stepAt(event.target)];
      if (!event.shiftKey || !from || from === to) return choice.clear();
      event.preventDefault();
      choice.pick(from, to);
    },
    on,
  );
  const copy = (event: ClipboardEvent) => {
    if (!event.clipboardData || !choice.copy(event.clipboardData)) return;
    take(event);
    if (event.type !== 'cut') return;
    const ids = choice.chosen();
    choice.remove();
    told.removed?.(ids);
  };
  list.addEventListener('copy', copy, { ...on, capture: true });
  list.addEventListener('cut', copy, { ...on, capture: true });
  list.addEventListener(
    'paste',
    (event) => {
      const pasted = event.clipboardData && choice.paste(event.clipboardData, stepAt(event.target));
      if (!pasted) return;
      take(event);
      if (pasted.refused) told.refused?.(pasted.refused);
      else told.pasted?.(pasted.ids);
    },
    { ...on, capture: true },
  );
  return () => off.abort();
}
