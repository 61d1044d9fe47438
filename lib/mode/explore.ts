// Breadth first over any system of packed states. States come out in the order of their distance, so the first of them with a
// property is the end of a shortest path to it, and any number of properties is asked in one pass. Same system, same answer.
import { assert } from '../base/assert.ts';
import { stateSet } from './state-set.ts';

export type System = {
  readonly initial: readonly number[];
  /** Keys are whole numbers from 0 to 2^bits - 1, bits at most 31. */
  readonly bits: number;
  /** Writes the successors of a state, and the label of each move where asked; gives how many. One for each edge. */
  readonly expand: (state: number, to: Int32Array, by: Int32Array | null) => number;
  /** No state has more successors than this. */
  readonly widest: number;
  /** Room for the successors of one state, written over by each question. */
  readonly room: { readonly to: Int32Array; readonly by: Int32Array };
};

export const systemWith = (parts: Omit<System, 'room'>): System => ({
  ...parts,
  room: { to: new Int32Array(parts.widest), by: new Int32Array(parts.widest) },
});

export type Exploration = {
  /** In the order found. */
  readonly states: Int32Array;
  /** Index of the state from which each was found first; -1 for the initial ones. */
  readonly parent: Int32Array;
  readonly edges: number;
  readonly complete: boolean;
  /** Why it is not complete. */
  readonly reason: string | null;
};

/** More states than this are not explored unless the caller asks: enough for a take-off with every slip, and under 100 MiB. */
export const MOST_STATES = 4_000_000;
const FIRST_ROOM = 1 << 12;
/** Room grows by this factor: less copying than doubling, and memory that nobody touched costs nothing. */
const MORE = 4;

export function explore(system: System, mostStates = MOST_STATES): Exploration {
  assert(system.bits <= 31, `keys of ${system.bits} bits do not fit`);
  const seen = stateSet(system.bits);
  let room = FIRST_ROOM;
  let states = new Int32Array(room);
  let parent = new Int32Array(room);
  let found = 0;
  let edges = 0;
  let cut = false;
  const { to } = system.room;
  const grow = (): void => {
    room *= MORE;
    states = grown(states, room);
    parent = grown(parent, room);
  };
  for (const state of system.initial) {
    if (!seen.add(state)) continue;
    if (found === room) grow();
    states[found] = state;
    parent[found] = -1;
    found += 1;
  }
  const { expand } = system;
  for (let at = 0; at < found; at += 1) {
    const count = expand(states[at]!, to, null);
    edges += count;
    for (let k = 0; k < count; k += 1) {
      const next = to[k]!;
      if (found >= mostStates) {
        if (!seen.has(next)) cut = true;
        continue;
      }
      if (!seen.add(next)) continue;
      if (found === room) grow();
      states[found] = next;
      parent[found] = at;
      found += 1;
    }
  }
  return {
    states: states.subarray(0, found),
    parent: parent.subarray(0, found),
    edges,
    complete: !cut,
    reason: cut ? `more than ${mostStates} states: what lies beyond them was not looked at` : null,
  };
}

function grown(old: Int32Array, room: number): Int32Array<ArrayBuffer> {
  const next = new Int32Array(room);
  next.set(old);
  return next;
}

/** Indices from an initial state to this one, both included. */
export function trail(found: Exploration, index: number): readonly number[] {
  const back: number[] = [];
  for (let at = index; at >= 0; at = found.parent[at]!) back.push(at);
  return back.reverse();
}

/** The label of the move by which a state was found; -1 for an initial one. Looked up again, so that the search carries none. */
export function labelInto(system: System, found: Exploration, index: number): number {
  const from = found.parent[index]!;
  if (from < 0) return -1;
  const { to, by } = system.room;
  const count = system.expand(found.states[from]!, to, by);
  const at = to.subarray(0, count).indexOf(found.states[index]!);
  assert(at >= 0, 'a state was found by a move that is not there');
  return by[at]!;
}
