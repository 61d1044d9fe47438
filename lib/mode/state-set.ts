// A set of packed states. Open addressing with linear probing; where all keys fit into a map of bits, the map, which is one
// look at memory and never grows.

export type StateSet = {
  /** True when the key was not there before. */
  readonly add: (key: number) => boolean;
  readonly has: (key: number) => boolean;
};

/** Up to this many bits of key the set is a map of bits: 2^28 bits are 32 MiB. */
const MAP_BITS = 28;
/** Slots at the start, and the share of them, in sixteenths, above which the table doubles. */
const FIRST_SLOTS = 1 << 12;
const FULL = 10;
/** An odd multiplier spreads keys that differ in high bits alone (2^32 over the golden ratio). */
const SPREAD = 0x9e3779b1;

export const stateSet = (bits: number): StateSet => (bits <= MAP_BITS ? bitMap(bits) : hashSet());

function bitMap(bits: number): StateSet {
  const map = new Int32Array(Math.max(1, 2 ** bits / 32));
  return {
    add: (key) => {
      const word = key >>> 5;
      const bit = 1 << (key & 31);
      const was = map[word]!;
      if ((was & bit) !== 0) return false;
      map[word] = was | bit;
      return true;
    },
    has: (key) => (map[key >>> 5]! & (1 << (key & 31))) !== 0,
  };
}

/** Keys are stored one higher, so that 0 marks an empty slot. */
export function hashSet(): StateSet {
  let slots = new Int32Array(FIRST_SLOTS);
  let mask = FIRST_SLOTS - 1;
  let shift = 32 - Math.log2(FIRST_SLOTS);
  let size = 0;
  const grow = (): void => {
    const old = slots;
    slots = new Int32Array(old.length * 2);
    mask = slots.length - 1;
    shift -= 1;
    for (const held of old) {
      if (held === 0) continue;
      let at = Math.imul(held, SPREAD) >>> shift;
      while (slots[at] !== 0) at = (at + 1) & mask;
      slots[at] = held;
    }
  };
  return {
    add: (key) => {
      const held = key + 1;
      let at = Math.imul(held, SPREAD) >>> shift;
      for (let here = slots[at]!; here !== 0; here = slots[at]!) {
        if (here === held) return false;
        at = (at + 1) & mask;
      }
      slots[at] = held;
      size += 1;
      if (size * 16 > slots.length * FULL) grow();
      return true;
    },
    has: (key) => {
      const held = key + 1;
      let at = Math.imul(held, SPREAD) >>> shift;
      for (let here = slots[at]!; here !== 0; here = slots[at]!) {
        if (here === held) return true;
        at = (at + 1) & mask;
      }
      return false;
    },
  };
}
