// What doing a step makes of a state of the machine, looked up once for each pair.
import type { Graph } from './graph.ts';
import type { Edges } from './moves.ts';
import type { Script } from './script.ts';
import type { Setting } from './setting.ts';
import { misfits, statesNothing } from './truth.ts';

export type Outcomes = {
  /** States of the machine after the step at this place is done in this one; the state itself where its hand does nothing. */
  readonly after: (place: number, state: number) => Int32Array;
  /** Where the procedure goes on from the place when this is the state after its step. */
  readonly next: (place: number, state: number) => readonly number[];
  /** What may come of a state by itself, the state itself first. */
  readonly settles: (state: number) => Int32Array;
  /** Accepted: some rule of the step's hand has its guard true and changes something. */
  readonly accepted: (place: number, state: number) => boolean;
  /** No step has more outcomes than this. */
  readonly widest: number;
};

/**
 * `trusted`: places whose expected modes are met by some flight. There a flight on which they are not met is not as written: the
 * crew sees it, and goes by what the step says for that case.
 */
export function outcomesFor(
  graph: Graph,
  script: Script,
  setting: Setting,
  auto: Edges,
  trusted: ReadonlySet<number>,
): Outcomes {
  const { first, to, rule, lines, machine } = graph;
  const cache = script.places.map((): (Int32Array | undefined)[] => []);
  const settled: (Int32Array | undefined)[] = [];
  // A selector turned to another figure on the same side of the aircraft leaves everything as it is.
  const sides = machine.modes.rules.map((one) =>
    ('any' in one ? one.any : [one]).flatMap(({ then }) => (then.only_if_rel_changes ? (then.rel_each ?? []) : [])),
  );

  const settles = (state: number): Int32Array => {
    const known = settled[state];
    if (known !== undefined) return known;
    const seen = new Set([state]);
    for (const at of seen) {
      for (let e = auto.first[at]!; e < auto.first[at + 1]!; e += 1) seen.add(auto.to[e]!);
    }
    return (settled[state] = Int32Array.from(seen));
  };

  const raw = (place: number, state: number): readonly number[] => {
    const { rules } = script.places[place]!;
    if (rules === null) return [state];
    const made = new Set<number>();
    for (let e = first[state]!; e < first[state + 1]!; e += 1) {
      if (!rules.includes(rule[e]!)) continue;
      made.add(to[e]!);
      if (sides[rule[e]!]!.includes(lines[state]!.rel)) made.add(state);
    }
    if (made.size === 0) made.add(state);
    return [...made];
  };

  const after = (place: number, state: number): Int32Array => {
    const known = cache[place]![state];
    if (known !== undefined) return known;
    const all = raw(place, state);
    const { step, rules } = script.places[place]!;
    let kept = all;
    if (setting.believe && step !== null && !statesNothing(step.expect)) {
      const right = (end: number): boolean => misfits(step.expect, lines[state]!, lines[end]!).length === 0;
      // Of several right lines the first that comes; what follows by itself follows later. It counts as the step's own where its
      // hand did something, or where it moves nothing and reads.
      const first = all.filter(right);
      const moved = rules === null ? all : all.filter((outcome) => outcome !== state);
      const later = (): readonly number[] =>
        [...new Set(moved.flatMap((end) => Array.from(settles(end))))].filter(right);
      kept = first.length > 0 ? first : later();
      if (kept.length === 0 && !trusted.has(place)) kept = all;
    }
    return (cache[place]![state] = Int32Array.from(kept));
  };

  const next = (place: number, state: number): readonly number[] => {
    const { ways, next: below } = script.places[place]!;
    if (ways.length === 0) return below;
    const certain = ways.filter((way) => way.when?.[state] === 'true');
    const open = certain.length > 0 ? certain : ways.filter((way) => way.when?.[state] !== 'false');
    const places = new Set(open.flatMap((way) => (way.to === null ? [] : [way.to])));
    if (certain.length === 0) for (const one of below) places.add(one);
    return [...places];
  };

  const accepted = (place: number, state: number): boolean => {
    const { rules } = script.places[place]!;
    if (rules === null) return true;
    for (let e = first[state]!; e < first[state + 1]!; e += 1) {
      if (rules.includes(rule[e]!) && to[e] !== state) return true;
    }
    return false;
  };

  let widest = 1;
  for (const { rules } of script.places) {
    if (rules === null || setting.believe) continue;
    for (let i = 0; i < lines.length; i += 1) {
      let count = 2;
      for (let e = first[i]!; e < first[i + 1]!; e += 1) if (rules.includes(rule[e]!)) count += 1;
      widest = Math.max(widest, count);
    }
  }
  const ways = Math.max(1, ...script.places.map((place) => place.ways.length + place.next.length));
  return { after, next, settles, accepted, widest: (setting.believe ? lines.length : widest) * ways };
}
