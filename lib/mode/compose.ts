// The steps of a procedure composed with the machine and with what may come from outside. A state is a state of the machine, a
// place in the procedure, a step still owed, the slips so far, and the surprises that have been.
import { err, ok, type Result } from '../base/result.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Refusal } from './compile.ts';
import { entryStates } from './entry.ts';
import { type System, systemWith } from './explore.ts';
import type { Graph } from './graph.ts';
import { edgesBy, labelOf, movesFor, type Shape, SURPRISE, slipsOf } from './moves.ts';
import { type Outcomes, outcomesFor } from './outcomes.ts';
import { type Script, scriptOf } from './script.ts';
import type { Setting } from './setting.ts';

export type Composed = {
  readonly graph: Graph;
  readonly script: Script;
  readonly setting: Setting;
  readonly system: System;
  readonly parts: (key: number) => Parts;
  readonly outcomes: Outcomes;
};

/** Parts of a composed state: index of the machine's state, place, place of the step put off, slips, surprises as bits. */
export type Parts = {
  readonly state: number;
  readonly place: number;
  readonly owed: number | null;
  readonly slips: number;
  readonly surprises: number;
};

const bitsFor = (count: number): number => Math.max(0, 32 - Math.clz32(count - 1));
/** A composed state is one integer below 2^31. */
const MOST_BITS = 31;

/** `trusted`: see outcomes.ts. */
export function compose(
  graph: Graph,
  procedure: Procedure,
  setting: Setting,
  trusted: ReadonlySet<number> = new Set(),
  script: Script = scriptOf(graph, procedure),
): Result<Composed, readonly Refusal[]> {
  const refuse = (because: string): Result<Composed, readonly Refusal[]> => err([{ at: '', because }]);
  if (!graph.complete) return refuse(`the mode table alone has ${graph.reason}`);
  const starts = entryStates(graph, procedure);
  if (starts.length === 0) {
    return refuse(`no state that can be reached on standard ${graph.machine.standard} fits the entry line`);
  }
  const { modes, rules } = graph.machine;
  const surprises = (modes.environment ?? []).filter((one) => setting.environment.includes(one.name));
  const missing = setting.environment.filter((name) => !surprises.some((one) => one.name === name));
  if (missing.length > 0) return refuse(`the sheet knows no ${missing.join(', ')}`);

  const hands = script.places.flatMap((place, index) => (place.rules === null ? [] : [index]));
  const mBits = bitsFor(graph.lines.length);
  const eShift = mBits;
  const sShift = eShift + surprises.length;
  const oShift = sShift + bitsFor(setting.atOnce + 1);
  const pShift = oShift + (setting.atOnce === 0 ? 0 : bitsFor(hands.length + 1));
  const bits = pShift + bitsFor(script.places.length);
  if (bits > MOST_BITS) {
    return refuse(`a state takes ${bits} bits, and ${MOST_BITS} can be explored: fewer slips or surprises at once`);
  }
  const shape: Shape = { mBits, eShift, sShift, oShift, pShift };
  const known = (modes.environment ?? []).flatMap((one) => one.rules);
  const byItself = rules.map((rule) => rule.who !== 'crew' && !known.includes(rule.id));
  const onGround = modes.initial.map((line) => line.phase);
  const asksPhase = modes.rules.map((rule) => ('any' in rule ? rule.any : [rule]).some(({ when }) => when.phase));
  // Before the first phase is over no aircraft flies: what the table allows there by a guard without phase is counted, not flown.
  const flown = (rule: number, state: number): boolean =>
    !setting.believe || asksPhase[rule]! || !onGround.includes(graph.lines[state]!.phase);
  const auto = edgesBy(graph, (rule, state) => byItself[rule]! && flown(rule, state));
  const outcomes = outcomesFor(graph, script, setting, auto, trusted);
  const handOf = script.places.map((_, index) => hands.indexOf(index) + 1);
  const moves = movesFor(script, outcomes, shape, auto, slipsOf(script, setting), handOf);
  const sudden = surprises.map(({ rules: ids }, which) => ({
    bit: 1 << (eShift + which),
    label: labelOf('surprise', which * SURPRISE),
    idle: ids.length === 0,
    edges: edgesBy(graph, (rule) => ids.includes(rules[rule]!.id)),
  }));

  const mMask = (1 << mBits) - 1;
  const sMask = (1 << (oShift - sShift)) - 1;
  const oMask = (1 << (pShift - oShift)) - 1;
  const middle = ((1 << pShift) - 1) & ~mMask;
  const oneMore = 1 << sShift;
  const surprised = ((1 << sShift) - 1) & ~mMask;
  const noneOwed = ~(oMask << oShift);
  const prompt = script.places.map((place) => place.prompt);
  const { atOnce } = setting;

  const expand = (key: number, to: Int32Array, by: Int32Array | null): number => {
    const m = key & mMask;
    const p = key >>> pShift;
    const mid = key & middle;
    const owed = (key >>> oShift) & oMask;
    const offset = moves.offset(p, m);
    const keys = moves.keys();
    const labels = moves.labels();
    let count = 0;
    let at = offset + 3;
    for (const end = at + keys[offset]!; at < end; at += 1) {
      to[count] = mid | keys[at]!;
      if (by !== null) by[count] = labels[at]!;
      count += 1;
    }
    if (((key >>> sShift) & sMask) < atOnce) {
      // Without a step owed both lists, which stand one behind the other; else the first.
      const end = at + keys[offset + 1]! + (owed === 0 ? keys[offset + 2]! : 0);
      for (; at < end; at += 1) {
        to[count] = (mid | keys[at]!) + oneMore;
        if (by !== null) by[count] = labels[at]!;
        count += 1;
      }
    }
    if (!prompt[p] && (~key & surprised) !== 0) {
      for (let s = 0; s < sudden.length; s += 1) {
        const { bit, label, idle, edges } = sudden[s]!;
        if ((key & bit) !== 0) continue;
        if (idle) {
          to[count] = key | bit;
          if (by !== null) by[count] = label + SURPRISE - 1;
          count += 1;
        }
        const rest = (key & ~mMask) | bit;
        for (let e = edges.first[m]!; e < edges.first[m + 1]!; e += 1) {
          to[count] = rest | edges.to[e]!;
          if (by !== null) by[count] = label + edges.rule[e]!;
          count += 1;
        }
      }
    }
    if (owed !== 0) {
      const place = hands[owed - 1]!;
      const rest = key & ~mMask & noneOwed;
      const list = outcomes.after(place, m);
      for (let k = 0; k < list.length; k += 1) {
        to[count] = rest | list[k]!;
        if (by !== null) by[count] = labelOf('do late', place);
        count += 1;
      }
    }
    return count;
  };
  const parts = (key: number): Parts => {
    const owed = (key >>> oShift) & oMask;
    return {
      state: key & mMask,
      surprises: (key & middle & ((1 << sShift) - 1)) >>> eShift,
      slips: (key >>> sShift) & sMask,
      owed: owed === 0 ? null : hands[owed - 1]!,
      place: key >>> pShift,
    };
  };
  const widest =
    64 + 4 * rules.length + outcomes.widest * (script.standing.length + 4) + script.leaves.length + surprises.length;
  return ok({ graph, script, setting, system: systemWith({ initial: starts, bits, expand, widest }), parts, outcomes });
}
