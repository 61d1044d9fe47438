/**
 * Proofs over the whole envelope. This folder proves any condition over any domain: it asks the sheet for speeds and the
 * operator's figures come in as values. It knows no procedure. No check may step through weights by itself; it asks here.
 */

import type { Sheet } from '../aircraft/sheet.ts';
import { assert } from '../base/assert.ts';

/** One variable and its range, both ends included. */
export type Axis = { readonly name: string; readonly from: number; readonly to: number; readonly unit: string };
export type Domain = readonly Axis[];

export type Span = { readonly from: number; readonly to: number };
/** What a procedure may limit; null or absent: the sheet's own range. Weight kg, elevation ft, temperature °C from standard, wind kt (head wind positive). */
export type Ranges = {
  readonly weight?: Span | null;
  readonly elevation?: Span | null;
  readonly temperature?: Span | null;
  readonly wind?: Span | null;
};

/** A declared variable. Throws when its range is turned round or not finite. */
export function axis(name: string, from: number, to: number, unit = ''): Axis {
  assert(Number.isFinite(from) && Number.isFinite(to) && from <= to, `${name} from ${from} to ${to} is no range`);
  return { name, from, to, unit };
}

/** The ranges over which a sheet, or a procedure inside it, is meant to hold. */
export function domainOf(sheet: Sheet, ranges: Ranges = {}): Domain {
  const { weights, limits } = sheet;
  const weight = ranges.weight ?? { from: weights.minimumFlight.value, to: weights.maximumTakeOff.value };
  const elevation = ranges.elevation ?? limits.elevation;
  const temperature = ranges.temperature ?? limits.temperature;
  const wind = ranges.wind ?? limits.wind;
  return [
    axis('weight', weight.from, weight.to, 'kg'),
    axis('elevation', elevation.from, elevation.to, 'ft'),
    axis('temperature', temperature.from, temperature.to, '°C'),
    axis('wind', wind.from, wind.to, 'kt'),
  ];
}

/** The same domain with one variable at one value. */
export const pinned = (domain: Domain, name: string, value: number): Domain =>
  domain.map((one) => (one.name === name ? { ...one, from: value, to: value } : one));
