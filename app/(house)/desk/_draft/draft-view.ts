// The draft as the screen reads it: a snapshot of each row that stays the same object until that row changes, so that a key
// pressed in one step draws one step again and no list.
import * as Y from 'yjs';
import { type Fields, metaOf, rowsOf } from '../../../../lib/document/model.ts';
import { ordered, orderedSteps } from '../../../../lib/document/order.ts';
import { type Reading, readBranch, readDraft, readMeta, readStep } from '../../../../lib/document/read.ts';
import type { Branch, Procedure, Step } from '../../../../lib/procedure/procedure.ts';

export type Placed = { readonly id: string; readonly parent: string | null };
export type Order = { readonly steps: readonly Placed[]; readonly branches: readonly string[] };
type Told = () => void;

export class DraftView {
  readonly doc: Y.Doc;
  readonly #told = new Map<string, Set<Told>>();
  readonly #steps = new Map<string, Step | undefined>();
  readonly #branches = new Map<string, Omit<Branch, 'steps'> | undefined>();
  #meta: Omit<Procedure, 'steps' | 'branches'> | undefined;
  #order: Order | undefined;
  #lastOrder: Order | undefined;
  #whole: Reading | undefined;

  constructor(doc: Y.Doc) {
    this.doc = doc;
    rowsOf(doc, 'steps').observeDeep(this.#onSteps);
    rowsOf(doc, 'branches').observeDeep(this.#onBranches);
    metaOf(doc).observeDeep(this.#onMeta);
  }

  #changed(
    list: 'steps' | 'branches',
    events: Y.YEvent<Y.AbstractType<unknown>>[],
    forget: Map<string, unknown>,
  ): void {
    const ids = new Set<string>();
    let moved = false;
    for (const event of events) {
      const atTop = event.path.length === 0;
      const keys = event instanceof Y.YMapEvent ? [...event.keysChanged] : [];
      for (const id of atTop ? keys : [String(event.path[0])]) ids.add(id);
      moved ||= atTop || (event.path.length === 1 && keys.some((key) => key === 'place' || key === 'gone'));
    }
    for (const id of ids) forget.delete(id);
    this.#whole = undefined;
    if (moved) {
      this.#order = undefined;
      this.#tell('order');
    }
    for (const id of ids) this.#tell(`${list}/${id}`);
    this.#tell('whole');
  }
  #onSteps = (events: Y.YEvent<Y.AbstractType<unknown>>[]) => this.#changed('steps', events, this.#steps);
  #onBranches = (events: Y.YEvent<Y.AbstractType<unknown>>[]) => this.#changed('branches', events, this.#branches);
  #onMeta = () => {
    this.#meta = undefined;
    this.#whole = undefined;
    this.#tell('meta');
    this.#tell('whole');
  };

  #tell(what: string): void {
    for (const told of this.#told.get(what) ?? []) told();
  }
  /** `what`: `steps/<id>`, `branches/<id>`, `order`, `meta`, or `whole` for any change. */
  subscribe(what: string, told: Told): () => void {
    const set = this.#told.get(what) ?? new Set();
    this.#told.set(what, set.add(told));
    return () => {
      set.delete(told);
      if (set.size === 0) this.#told.delete(what);
    };
  }

  step(id: string): Step | undefined {
    return kept(this.#steps, id, () => fields(this.doc, 'steps', id, (found) => readStep(id, found)));
  }
  branch(id: string): Omit<Branch, 'steps'> | undefined {
    return kept(this.#branches, id, () => fields(this.doc, 'branches', id, (found) => readBranch(id, found)));
  }
  meta(): Omit<Procedure, 'steps' | 'branches'> {
    this.#meta ??= readMeta(metaOf(this.doc));
    return this.#meta;
  }
  order(): Order {
    if (this.#order) return this.#order;
    const fresh = { steps: orderedSteps(this.doc), branches: ordered(this.doc, 'branches') };
    const unchanged = this.#lastOrder && JSON.stringify(this.#lastOrder) === JSON.stringify(fresh);
    this.#order = this.#lastOrder = unchanged ? this.#lastOrder! : fresh;
    return this.#order;
  }
  /** The whole procedure for the checks, with what is wrong in its stored shape. The same object until something changes. */
  whole(): Reading {
    this.#whole ??= readDraft(this.doc);
    return this.#whole;
  }

  close(): void {
    rowsOf(this.doc, 'steps').unobserveDeep(this.#onSteps);
    rowsOf(this.doc, 'branches').unobserveDeep(this.#onBranches);
    metaOf(this.doc).unobserveDeep(this.#onMeta);
    this.#told.clear();
  }
}

function kept<T>(cache: Map<string, T>, id: string, read: () => T): T {
  if (!cache.has(id)) cache.set(id, read());
  return cache.get(id)!;
}

function fields<T>(doc: Y.Doc, list: 'steps' | 'branches', id: string, read: (found: Fields) => T): T | undefined {
  const found = rowsOf(doc, list).get(id);
  return found instanceof Y.Map ? read(found) : undefined;
}
