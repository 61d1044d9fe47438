// What a cue says about the aircraft at the moment it holds: the state narrowed to the possibilities that fit.
import type { Gate } from '../gate/syntax.ts';
import { type AircraftState, type FlapWorld, type SpeedBound, withWorlds } from './state.ts';

/** The parts of a gate that all hold: those of an `all`, else the gate itself. */
export function conjuncts(gate: Gate | null): readonly Gate[] {
  if (gate === null) return [];
  if (gate.kind === 'all') return gate.of.flatMap(conjuncts);
  if (gate.kind === 'within') return conjuncts(gate.of);
  return [gate];
}

/** Each way in which a gate can hold, as parts that all hold. Beyond this many ways the gate is taken as one part. */
const MOST_WAYS = 64;
export function alternatives(gate: Gate | null): readonly (readonly Gate[])[] {
  if (gate === null) return [[]];
  if (gate.kind === 'any') return gate.of.flatMap(alternatives);
  if (gate.kind === 'within') return alternatives(gate.of);
  if (gate.kind !== 'all') return [[gate]];
  let ways: readonly (readonly Gate[])[] = [[]];
  for (const part of gate.of) {
    const next = alternatives(part);
    if (ways.length * next.length > MOST_WAYS) return [conjuncts(gate)];
    ways = ways.flatMap((way) => next.map((more) => [...way, ...more]));
  }
  return ways;
}

const mirrored = { '<': '>', '<=': '>=', '=': '=', '>=': '<=', '>': '<' } as const;

/** Bounds on the indicated speed in parts that all hold. */
export function speedBounds(parts: readonly Gate[]): readonly SpeedBound[] {
  return parts.flatMap((part): readonly SpeedBound[] => {
    if (part.kind === 'window' && part.what.kind === 'measure' && part.what.measure === 'speed') {
      return [
        { op: '>=', term: part.low },
        { op: '<=', term: part.high },
      ];
    }
    if (part.kind !== 'compare') return [];
    if (part.left.kind === 'measure' && part.left.measure === 'speed') return [{ op: part.op, term: part.right }];
    if (part.right.kind === 'measure' && part.right.measure === 'speed') {
      return [{ op: mirrored[part.op], term: part.left }];
    }
    return [];
  });
}

const fits = (world: FlapWorld, part: Gate): boolean => {
  if (part.kind === 'not') return part.of.kind !== 'flaps' || !onlyThere(world, part.of);
  if (part.kind !== 'flaps') return true;
  return part.how === 'selected' ? world.selected === part.detent : world.indicated.includes(part.detent);
};
const onlyThere = (world: FlapWorld, part: Extract<Gate, { kind: 'flaps' }>): boolean =>
  part.how === 'selected'
    ? world.selected === part.detent
    : world.indicated.length === 1 && world.indicated[0] === part.detent;

const settled = (world: FlapWorld, parts: readonly Gate[]): FlapWorld => {
  const seen = parts.find((part) => part.kind === 'flaps' && part.how === 'indicated');
  return seen?.kind === 'flaps' ? { ...world, indicated: [seen.detent] } : world;
};

/** A detent that the cue wants indicated or selected although nothing before it puts the flap there; null when it can be. */
export function impossibleDetent(state: AircraftState, parts: readonly Gate[]): string | null {
  for (const part of parts) {
    if (part.kind === 'flaps' && !state.worlds.some((world) => fits(world, part))) return part.detent;
  }
  return null;
}

/** The state in which the parts hold. What contradicts it all is believed: the cue is then what the pilot sees. */
export function narrowed(state: AircraftState, parts: readonly Gate[]): AircraftState {
  let next = state;
  const worlds = state.worlds.filter((world) => parts.every((part) => fits(world, part)));
  if (worlds.length > 0)
    next = withWorlds(
      next,
      worlds.map((world) => settled(world, parts)),
    );
  else {
    const seen = parts.find((part) => part.kind === 'flaps');
    if (seen?.kind === 'flaps') {
      next = withWorlds(next, [{ origin: seen.detent, selected: seen.detent, indicated: [seen.detent] }]);
    }
  }
  for (const part of parts) {
    if (part.kind === 'gear') next = { ...next, gear: [part.position] };
    if (part.kind === 'autopilot') next = { ...next, autopilot: part.on ? 'on' : 'off' };
    if (part.kind === 'mode') {
      const kept = next.modes[part.axis].filter((word) => part.words.includes(word));
      next = { ...next, modes: { ...next.modes, [part.axis]: kept.length > 0 ? kept : part.words } };
    }
  }
  return next;
}
