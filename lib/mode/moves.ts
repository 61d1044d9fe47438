// The moves of a composed state, prepared once for each pair of place and machine state: what is left for each composed state
// is to copy them beside its slips and surprises.
import type { Graph } from './graph.ts';
import type { Outcomes } from './outcomes.ts';
import type { Script } from './script.ts';
import type { Setting } from './setting.ts';

/** What a move was. Its number is `kind * KIND + what`: a rule, a place, a surprise and its rule, or a branch. */
export const MOVES = [
  'rule',
  'do',
  'pass',
  'forget',
  'put off',
  'do first of two',
  'do late',
  'surprise',
  'branch',
  'standing',
] as const;
export type Move = (typeof MOVES)[number];
const KIND = 1 << 20;
/** Within a surprise: which, and by which rule. */
export const SURPRISE = 1 << 10;
const FIRST_POOL = 1 << 14;
export const labelOf = (move: Move, what: number): number => MOVES.indexOf(move) * KIND + what;
export const moveOf = (label: number): { readonly move: Move; readonly what: number } => ({
  move: MOVES[Math.floor(label / KIND)]!,
  what: label % KIND,
});

export type Edges = { readonly first: Int32Array; readonly to: Int32Array; readonly rule: Uint16Array };

/** The edges of the rules wanted, in the order of the graph. */
export function edgesBy(graph: Graph, want: (rule: number, state: number) => boolean): Edges {
  const first = new Int32Array(graph.lines.length + 1);
  const to: number[] = [];
  const rule: number[] = [];
  for (let i = 0; i < graph.lines.length; i += 1) {
    for (let e = graph.first[i]!; e < graph.first[i + 1]!; e += 1) {
      if (!want(graph.rule[e]!, i)) continue;
      to.push(graph.to[e]!);
      rule.push(graph.rule[e]!);
    }
    first[i + 1] = to.length;
  }
  return { first, to: Int32Array.from(to), rule: Uint16Array.from(rule) };
}

/** Bits of a key: machine state lowest, then surprises, slips, the step owed, the place. */
export type Shape = {
  readonly mBits: number;
  readonly eShift: number;
  readonly sShift: number;
  readonly oShift: number;
  readonly pShift: number;
};

/**
 * Lists in one array, so that the search reads memory in runs. At an offset stand three counts and then as many keys: moves
 * that are always there, moves that cost a slip, moves that cost a slip and leave a step owed. Labels stand beside the keys.
 */
export type Moves = {
  readonly keys: () => Int32Array;
  readonly labels: () => Int32Array;
  readonly offset: (place: number, state: number) => number;
};

export type Slips = { readonly late: boolean; readonly twice: boolean; readonly forgotten: boolean };

export function movesFor(
  script: Script,
  outcomes: Outcomes,
  shape: Shape,
  auto: Edges,
  slips: readonly Slips[],
  handOf: readonly number[],
): Moves {
  const { places, main, leaves, standing } = script;
  const { mBits, oShift, pShift } = shape;
  const offsets: (Int32Array | undefined)[] = places.map(() => undefined);
  let keys = new Int32Array(FIRST_POOL);
  let labels = new Int32Array(FIRST_POOL);
  let end = 0;

  const store = (always: readonly number[], slip: readonly number[], owing: readonly number[]): number => {
    const needed = end + 3 + (always.length + slip.length + owing.length) / 2;
    if (needed > keys.length) {
      const room = Math.max(needed, keys.length * 2);
      const [oldKeys, oldLabels] = [keys, labels];
      keys = new Int32Array(room);
      labels = new Int32Array(room);
      keys.set(oldKeys);
      labels.set(oldLabels);
    }
    const offset = end;
    for (const list of [always, slip, owing]) keys[end++] = list.length / 2;
    for (const list of [always, slip, owing]) {
      for (let k = 0; k < list.length; k += 2) {
        keys[end] = list[k]!;
        labels[end++] = list[k + 1]!;
      }
    }
    return offset;
  };

  const build = (p: number, m: number): number => {
    const place = places[p]!;
    const always: number[] = [];
    const slip: number[] = [];
    const owing: number[] = [];
    const at = (there: number, state: number): number => (there << pShift) | state;
    if (!place.prompt) {
      for (let e = auto.first[m]!; e < auto.first[m + 1]!; e += 1) {
        always.push(at(p, auto.to[e]!), labelOf('rule', auto.rule[e]!));
      }
      if (p <= main.end) {
        for (const [b, leave] of leaves.entries()) {
          if (leave.when?.[m] !== 'false') always.push(at(leave.to, m), labelOf('branch', b));
        }
        for (const one of standing) {
          if (p < one.from || p === one.place || places[one.place]!.cue?.[m] === 'false') continue;
          for (const state of outcomes.after(one.place, m)) always.push(at(p, state), labelOf('standing', one.place));
        }
      }
    }
    const never = place.only?.[m] === 'false';
    const waits = place.cue?.[m] === 'false';
    if (place.step !== null && !never && !waits) {
      const owed = handOf[p]! << oShift;
      for (const state of outcomes.after(p, m)) {
        for (const next of outcomes.next(p, state)) {
          always.push(at(next, state), labelOf('do', p));
          if (slips[p]!.twice) owing.push(at(next, state) | owed, labelOf('do first of two', p));
        }
      }
      for (const next of place.next) {
        if (slips[p]!.forgotten) slip.push(at(next, m), labelOf('forget', p));
        if (slips[p]!.late) owing.push(at(next, m) | owed, labelOf('put off', p));
      }
    }
    // A step that is not for this flight, or whose cue waits for another mode line, may be passed over.
    if (never || place.free) for (const next of place.left) always.push(at(next, m), labelOf('pass', p));
    else if (waits) for (const next of place.waited) always.push(at(next, m), labelOf('pass', p));
    return store(always, slip, owing);
  };
  const offset = (place: number, state: number): number => {
    // One higher, so that 0 marks what was not asked yet.
    const here = (offsets[place] ??= new Int32Array(1 << mBits));
    const known = here[state]!;
    return known > 0 ? known - 1 : (here[state] = build(place, state) + 1) - 1;
  };
  return { keys: () => keys, labels: () => labels, offset };
}

/** Slips that the setting allows at each place. Only a hand that the guidance hears of can slip. */
export function slipsOf(script: Script, setting: Setting): readonly Slips[] {
  return script.places.map(({ step, rules }) => {
    const may = (which: Setting['late']): boolean =>
      step !== null &&
      rules !== null &&
      setting.atOnce > 0 &&
      (which === 'all' || (which !== 'none' && which.includes(step.id)));
    return { late: may(setting.late), twice: may(setting.twice), forgotten: may(setting.forgotten) };
  });
}
