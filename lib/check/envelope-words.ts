// The ranges over which a procedure was checked, as said beside "checked for these properties".
import type { Sheet } from '../aircraft/sheet.ts';
import type { Procedure, Range } from '../procedure/procedure.ts';
import { formatDeviation, formatHeight, formatLevel, formatSpeed, formatTonnes } from '../units/format.ts';
import type { Deviation, Feet, FlightLevel, Kilograms, Knots } from '../units/quantity.ts';

const span = (range: Range | null, write: (value: number) => string): string | null =>
  range === null ? null : `${write(range.from)} to ${write(range.to)}`;

const RANGES = ['weight', 'elevation', 'temperature', 'wind', 'level'] as const;

/** Why nothing can be proven over these ranges; null when they are ranges. */
export function envelopeProblem({ envelope }: Procedure): string | null {
  for (const name of RANGES) {
    const range = envelope[name];
    if (range === null) continue;
    if (!Number.isFinite(range.from) || !Number.isFinite(range.to)) return `the ${name} range has no figures`;
    if (range.from > range.to) return `the ${name} range begins above its end`;
  }
  return null;
}

/** Weight first; what is not limited is the sheet's own range; without a sheet only what the procedure says. */
export function envelopeWords(procedure: Procedure, sheet: Sheet | null): string {
  const { weight, elevation, temperature, wind, level } = procedure.envelope;
  const whole = sheet && { from: sheet.weights.minimumFlight.value, to: sheet.weights.maximumTakeOff.value };
  const words = [
    span(weight ?? whole, (value) => formatTonnes(value as Kilograms)),
    span(elevation, (value) => formatHeight(value as Feet)),
    span(temperature, (value) => formatDeviation(value as Deviation)),
    span(wind, (value) => `${value > 0 ? '+' : ''}${formatSpeed(value as Knots)}`),
    span(level, (value) =>
      value % 100 === 0 && value >= 10_000 ? formatLevel((value / 100) as FlightLevel) : formatHeight(value as Feet),
    ),
  ].filter((text) => text !== null);
  return words.length === 0 ? 'no ranges are stated' : words.join(', ');
}
