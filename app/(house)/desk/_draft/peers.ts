// The others in the draft, from what their tabs say of themselves. Nothing of it is stored.
import type { Presence } from '../../../../lib/document/wire.ts';

type Awareness = {
  readonly clientID: number;
  getStates(): Map<number, Record<string, unknown>>;
  on(event: 'change', told: () => void): void;
  off(event: 'change', told: () => void): void;
};
export type Peer = Presence & { readonly tab: number };

const NOBODY: readonly Peer[] = [];

export class Peers {
  readonly #awareness: Awareness;
  readonly #told = new Set<() => void>();
  readonly #rows = new Map<string, readonly Peer[]>();
  #others: readonly Peer[] = NOBODY;

  constructor(awareness: Awareness) {
    this.#awareness = awareness;
    awareness.on('change', this.#read);
    this.#read();
  }

  #read = (): void => {
    const found = [...this.#awareness.getStates()].flatMap(([tab, state]): Peer[] => {
      const { person, at } = state as Partial<Presence>;
      if (tab === this.#awareness.clientID || typeof person?.id !== 'string') return [];
      return [{ tab, person, at: typeof at?.row === 'string' ? at : null }];
    });
    const fresh = found.sort((a, b) => a.tab - b.tab);
    if (JSON.stringify(fresh) === JSON.stringify(this.#others)) return;
    this.#others = fresh;
    const rows = new Set([...this.#rows.keys(), ...fresh.flatMap((peer) => peer.at?.row ?? [])]);
    for (const row of rows) {
      const here = fresh.filter((peer) => peer.at?.row === row);
      const was = this.#rows.get(row) ?? NOBODY;
      if (here.length === 0) this.#rows.delete(row);
      else if (JSON.stringify(here) !== JSON.stringify(was)) this.#rows.set(row, here);
    }
    for (const told of this.#told) told();
  };

  others = (): readonly Peer[] => this.#others;
  at = (row: string): readonly Peer[] => this.#rows.get(row) ?? NOBODY;
  subscribe = (told: () => void): (() => void) => {
    this.#told.add(told);
    return () => this.#told.delete(told);
  };
  close(): void {
    this.#awareness.off('change', this.#read);
    this.#told.clear();
  }
}
