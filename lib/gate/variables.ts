/** What a gate speaks of: for the checks that ask whether a detent, a mode or a step exists at all. */
import type { Axis, Gate, Measure, NamedAltitude, SpeedName, Term } from './syntax.ts';
import { visitGate } from './visit.ts';

export type Mention = { readonly name: SpeedName; readonly detent: string | null; readonly icing: boolean };

/** Each list in the order of the text, nothing twice. */
export type Variables = {
  readonly measures: readonly Measure[];
  readonly speeds: readonly Mention[];
  /** Of speeds and of flaps; not the stand-ins `indicated` and `selected`. */
  readonly detents: readonly string[];
  readonly altitudes: readonly NamedAltitude[];
  readonly targets: readonly (Term & { kind: 'target' })['name'][];
  readonly modes: readonly { readonly axis: Axis; readonly word: string }[];
  readonly armed: readonly string[];
  readonly heard: readonly string[];
  readonly events: readonly string[];
  readonly judged: readonly string[];
  readonly steps: readonly string[];
  readonly points: readonly string[];
  readonly gear: boolean;
  readonly autopilot: boolean;
};

const once = <T>(all: readonly T[]): readonly T[] => [
  ...new Map(all.map((each) => [typeof each === 'string' ? each : JSON.stringify(each), each])).values(),
];

export function variablesOf(gate: Gate): Variables {
  const gates: Gate[] = [];
  const terms: Term[] = [];
  visitGate(gate, { gate: (each) => gates.push(each), term: (each) => terms.push(each) });
  const pick = <T>(read: (gate: Gate) => readonly T[]): readonly T[] => once(gates.flatMap(read));
  const seen = <T>(read: (term: Term) => readonly T[]): readonly T[] => once(terms.flatMap(read));
  const trends = gates.flatMap((each) => (each.kind === 'trend' ? [each.measure] : []));
  const detents = [
    ...terms.flatMap((each) => (each.kind === 'speed' && each.detent !== null ? [each.detent] : [])),
    ...gates.flatMap((each) => (each.kind === 'flaps' ? [each.detent] : [])),
  ];
  return {
    measures: once([...terms.flatMap((each) => (each.kind === 'measure' ? [each.measure] : [])), ...trends]),
    speeds: seen((each) =>
      each.kind === 'speed' ? [{ name: each.name, detent: each.detent, icing: each.icing }] : [],
    ),
    detents: once(detents.filter((each) => each !== 'indicated' && each !== 'selected')),
    altitudes: seen((each) => (each.kind === 'altitude' ? [each.name] : [])),
    targets: seen((each) => (each.kind === 'target' ? [each.name] : [])),
    modes: pick((each) => (each.kind === 'mode' ? each.words.map((word) => ({ axis: each.axis, word })) : [])),
    armed: pick((each) => (each.kind === 'armed' ? [each.word] : [])),
    heard: pick((each) => (each.kind === 'heard' ? [each.words] : [])),
    events: pick((each) => (each.kind === 'event' ? [each.text] : [])),
    judged: pick((each) => (each.kind === 'judged' ? [each.text] : [])),
    steps: pick((each) => {
      if (each.kind === 'after') return [each.step];
      return each.kind === 'within' && each.step !== null ? [each.step] : [];
    }),
    points: seen((each) => (each.kind === 'measure' && each.of !== null ? [each.of] : [])),
    gear: gates.some((each) => each.kind === 'gear'),
    autopilot: gates.some((each) => each.kind === 'autopilot'),
  };
}
