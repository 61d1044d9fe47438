// Where in its envelope a procedure is flown, and at which aerodrome: every tonne, since the worst is often in the middle.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Conditions } from '../flight/trace.ts';
import type { Aerodrome, Library } from '../library/library.ts';
import { allSteps, type Procedure, type Range } from '../procedure/procedure.ts';

type Point = Partial<Conditions> & Pick<Conditions, 'weight'>;
const TONNE = 1000;

/** Both ends and every whole tonne between them, kg. */
function tonnes({ from, to }: Range): readonly number[] {
  const first = Math.floor(from / TONNE) + 1;
  const between = Array.from(
    { length: Math.max(0, Math.ceil(to / TONNE) - first) },
    (_, index) => (first + index) * TONNE,
  );
  return from === to ? [from] : [from, ...between, to];
}

const held = (range: Range, within: Range): Range => {
  const hold = (value: number): number => Math.min(Math.max(value, within.from), within.to);
  return { from: hold(range.from), to: hold(range.to) };
};

/** Both ends and nil between them; what is not limited is flown at nil alone. */
const ends = (range: Range | null, within: Range): readonly number[] => {
  if (range === null) return [0];
  const { from, to } = held(range, within);
  const nil = from <= 0 && to >= 0 ? [0] : [];
  return [...new Set([...nil, from, to])];
};

/** A figure in feet that the entry names as selected altitude. */
function selected(procedure: Procedure, place: Aerodrome | null): Partial<Conditions> {
  const said = /^(\d{1,3}(?:[\u00a0\u202f ]\d{3})+|\d{3,5}) ft( AAL)?/.exec(procedure.entry.selectedAltitude);
  if (said === null) return {};
  const figure = Number(said[1]!.replaceAll(/[\u00a0\u202f ]/g, ''));
  const altitude = said[2] === undefined ? figure : figure + (place?.elevation ?? 0);
  return { selectedAltitude: altitude, missedApproachAltitude: altitude };
}

/** Weights × winds × temperatures, at the elevation of the aerodrome named, else at the lowest of the envelope. */
export function pointsOf(procedure: Procedure, sheet: Sheet, place: Aerodrome | null): readonly Point[] {
  const { envelope } = procedure;
  const { weights, limits } = sheet;
  const heaviest = procedure.phases.includes('take-off') ? weights.maximumTakeOff.value : weights.maximumLanding.value;
  const flyable = { from: weights.minimumFlight.value, to: heaviest };
  const weight =
    envelope.weight === null
      ? flyable
      : held(envelope.weight, { from: flyable.from, to: weights.maximumTakeOff.value });
  const elevation =
    place?.elevation ?? (envelope.elevation === null ? 0 : held(envelope.elevation, limits.elevation).from);
  return ends(envelope.temperature, limits.temperature).flatMap((temperature) =>
    ends(envelope.wind, limits.wind).flatMap((wind) =>
      tonnes(weight).map((kg) => ({ weight: kg, wind, temperature, elevation, ...selected(procedure, place) })),
    ),
  );
}

/** The aerodrome whose code or name stands in the title or the effectivity, else in a step. */
export function placeOf(procedure: Procedure, library: Library | null): Aerodrome | null {
  const texts = [
    `${procedure.title} ${procedure.effectivity.note}`,
    allSteps(procedure)
      .map(({ cue, value, only }) => `${cue} ${value} ${only}`)
      .join(' '),
  ];
  for (const text of texts) {
    const found = library?.aerodromes.find(({ code, name }) => new RegExp(`\\b(${code}|${name})\\b`).test(text));
    if (found !== undefined) return found;
  }
  return null;
}
