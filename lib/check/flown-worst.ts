// Of all flights the worst, and how it is told: under which conditions, what happened when.
import type { Conditions, FlightEvent, Trace } from '../flight/trace.ts';
import { formatDeviation, formatHeight, formatNumber, formatTonnes } from '../units/format.ts';
import type { Deviation, Feet, Kilograms } from '../units/quantity.ts';
import type { Moment, Witness } from './finding.ts';
import type { Flown, FlownOne } from './flown.ts';
import type { RuleContext } from './rule.ts';

export type WorstFlight = {
  readonly one: FlownOne;
  readonly value: number;
  /** In how many of how many flights something was measured. */
  readonly hits: number;
  readonly of: number;
};

/** Says why nothing was flown. True when there is nothing to ask. */
export function sayUnflown({ flown, unasked }: Pick<RuleContext, 'flown' | 'unasked'>): boolean {
  if (flown.because !== null) unasked(flown.because, { step: '', field: 'phases' });
  return flown.because !== null;
}

/** The flight in which a measure is largest, the first of equals; null where it is null in all. */
export function worstFlight({ flights }: Flown, measure: (one: FlownOne) => number | null): WorstFlight | null {
  let worst: { one: FlownOne; value: number } | null = null;
  let hits = 0;
  for (const one of flights) {
    const value = measure(one);
    if (value === null) continue;
    hits += 1;
    if (worst === null || value > worst.value + 1e-9) worst = { one, value };
  }
  return worst && { ...worst, hits, of: flights.length };
}

/** `48 t, 10 kt tail wind, ISA+25, 5 430 ft`: weight always, the rest where it is not nil. */
export function conditionsWords(conditions: Conditions): string {
  const { weight, wind, temperature, elevation, enginesOut, detent } = conditions;
  return [
    formatTonnes(weight as Kilograms),
    detent,
    ...(wind === 0 ? [] : [`${formatNumber(Math.abs(wind))} kt ${wind > 0 ? 'head' : 'tail'} wind`]),
    ...(temperature === 0 ? [] : [formatDeviation(temperature as Deviation)]),
    ...(elevation === 0 ? [] : [`aerodrome at ${formatHeight(elevation as Feet)}`]),
    ...(enginesOut === 0 ? [] : ['one engine out']),
  ]
    .filter((words) => words !== '')
    .join(', ');
}

/** `3 of 66 flights`, `every flight`. */
export const sharesWords = ({ hits, of }: { readonly hits: number; readonly of: number }): string =>
  hits === of ? (of === 1 ? 'the flight' : `all ${of} flights`) : `${hits} of ${of} flights`;

export const seconds = (value: number): string => `${formatNumber(value)} s`;
export const feet = (value: number): string => formatHeight((Math.round(value / 10) * 10) as Feet);
export const knots = (value: number): string => `${formatNumber(value)} kt`;

export const eventMoment = ({ time, says, height, speed, verticalSpeed }: FlightEvent): Moment => ({
  ...{ time, says, height, speed, verticalSpeed },
});

/** What the aircraft does at a moment of a flight, in a straight line between the rows that were kept. */
export function momentAt({ samples, events }: Trace, time: number, says: string): Moment {
  const row = samples.time.findIndex((at) => at >= time);
  if (row < 0 || samples.time.length === 0) {
    const near = events.findLast((event) => event.time <= time) ?? events[0];
    return { time, says, height: near?.height ?? 0, speed: near?.speed ?? 0, verticalSpeed: near?.verticalSpeed ?? 0 };
  }
  const from = Math.max(0, row - 1);
  const whole = samples.time[row]! - samples.time[from]!;
  const share = whole > 0 ? (time - samples.time[from]!) / whole : 0;
  const at = (column: Float64Array): number => column[from]! + share * (column[row]! - column[from]!);
  return { time, says, height: at(samples.height), speed: at(samples.speed), verticalSpeed: at(samples.verticalSpeed) };
}

/** A witness that is flown again by its conditions; its moments by time. */
export function flightWitness(trace: Trace, moments: readonly Moment[], also = ''): Witness {
  const sorted = moments.toSorted((a, b) => a.time - b.time);
  const told = sorted.map(
    ({ time, says, height, speed }) => `${seconds(time)} ${says} (${feet(height)} AAL, ${knots(speed)})`,
  );
  const says = `flown at ${conditionsWords(trace.conditions)}: ${[...told, ...(also === '' ? [] : [also])].join('; ')}`;
  return { kind: 'flight', says, conditions: trace.conditions, engine: trace.version, moments: sorted };
}

/** The first change to one of these vertical modes; null: never in this flight. */
export const firstMode = ({ events }: Trace, ...words: readonly string[]): FlightEvent | null =>
  events.find((event) => event.kind === 'mode' && event.line !== null && words.includes(event.line.vertical)) ?? null;
