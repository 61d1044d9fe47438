// A state of the guidance packed into one integer: each axis a run of bits, each armed word one bit.
import type { ModeSet } from '../aircraft/mode-set.ts';

/** Axes of which exactly one word is active. The order is the order of the bits. */
export const AXES = ['thrust', 'lateral', 'vertical', 'rel', 'phase'] as const;
export type StateAxis = (typeof AXES)[number];

export type Field = { readonly words: readonly string[]; readonly shift: number; readonly mask: number };
export type Layout = Readonly<Record<StateAxis | 'armedVertical' | 'armedLateral', Field>> & { readonly bits: number };

/** A state in words, as a pilot reads it. `armed`: both axes together, in the order of the sheet. */
export type Line = {
  readonly thrust: string;
  readonly lateral: string;
  readonly vertical: string;
  readonly armed: readonly string[];
  readonly rel: string;
  readonly phase: string;
};

const bitsFor = (count: number): number => Math.max(0, 32 - Math.clz32(count - 1));

/** Where each axis lies. The caller refuses a layout of more bits than an integer holds. */
export function layoutOf(modes: ModeSet): Layout {
  let shift = 0;
  const place = (words: readonly string[], bits: number): Field => {
    const field = { words, shift, mask: bits >= 31 ? 0x7fffffff : (1 << bits) - 1 };
    shift += bits;
    return field;
  };
  const thrust = place(modes.thrust, bitsFor(modes.thrust.length));
  const lateral = place(modes.lateral, bitsFor(modes.lateral.length));
  const vertical = place(modes.vertical, bitsFor(modes.vertical.length));
  const rel = place(modes.rel, bitsFor(modes.rel.length));
  const phase = place(modes.phase, bitsFor(modes.phase.length));
  const armedVertical = place(modes.armedVertical, modes.armedVertical.length);
  const armedLateral = place(modes.armedLateral, modes.armedLateral.length);
  return { thrust, lateral, vertical, rel, phase, armedVertical, armedLateral, bits: shift };
}

export const read = (field: Field, state: number): number => (state >>> field.shift) & field.mask;
export const write = (field: Field, state: number, value: number): number =>
  (state & ~(field.mask << field.shift)) | (value << field.shift);

/** Bits of these words, in the field's own order; words that are not of the field are left out. */
export function bitsOf(field: Field, words: readonly string[]): number {
  return field.words.reduce((bits, word, index) => (words.includes(word) ? bits | (1 << index) : bits), 0);
}

export function lineOf(layout: Layout, state: number): Line {
  const word = (axis: StateAxis): string => layout[axis].words[read(layout[axis], state)]!;
  const armed = (field: Field): readonly string[] =>
    field.words.filter((_, index) => ((read(field, state) >>> index) & 1) === 1);
  return {
    thrust: word('thrust'),
    lateral: word('lateral'),
    vertical: word('vertical'),
    armed: [...armed(layout.armedVertical), ...armed(layout.armedLateral)],
    rel: word('rel'),
    phase: word('phase'),
  };
}

/** `GOVERN · COURSE · GLIDE, armed ALT`: the three axes and what is armed, as one line. */
export function lineWords(line: Line): string {
  const armed = line.armed.length === 0 ? 'nothing armed' : `armed ${line.armed.join(', ')}`;
  return `${line.thrust} · ${line.lateral} · ${line.vertical}, ${armed}`;
}
