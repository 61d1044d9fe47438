/** Short forms of the trade that are more than a number and a unit: `ISA+15`, `220/30`, `Q1013`, `A2992`, `14:05Z`. */
import { err, ok, type Result } from '../base/result.ts';
import { inchesToHectopascals } from './convert.ts';
import { type NumberProblem, parseDecimal, tidy } from './decimal.ts';
import type { FleetUnits } from './fleet.ts';
import { formatPressure, formatTime } from './format.ts';
import { PRESSURE } from './measure.ts';
import { parseQuantity } from './parse.ts';
import {
  type Degrees,
  type Deviation,
  degrees,
  deviation,
  type Hectopascals,
  hectopascals,
  inchesOfMercury,
  type Knots,
  knots,
  type Minutes,
  minutes,
} from './quantity.ts';

const refuse = (sentence: string, ...instead: string[]): Result<never, NumberProblem> => err({ sentence, instead });

/** `ISA+15`, `ISA-8`, `ISA`. A bare number is refused: it may be the temperature itself. */
export function parseDeviation(text: string): Result<Deviation, NumberProblem> {
  const said = tidy(text).toUpperCase();
  const found = said.match(/^ISA ?(?<off>[-+] ?[\d., ]+)?(?: ?°?C)?$/);
  if (!found) {
    const bare = parseDecimal(said);
    const offer = bare.ok ? [`ISA${bare.value < 0 ? '' : '+'}${bare.value}`] : [];
    return refuse(`"${tidy(text)}" is no deviation from standard: type ${offer[0] ?? 'ISA+15'}.`, ...offer);
  }
  const off = found.groups?.off;
  if (off === undefined) return ok(deviation(0));
  const number = parseDecimal(off.replace(/^([-+]) /, '$1'));
  if (!number.ok) return refuse(number.error.sentence, ...number.error.instead.map((each) => `ISA${each}`));
  return Math.abs(number.value) <= 60
    ? ok(deviation(number.value))
    : refuse(`${said} is outside ISA-60 to ISA+60: type the difference from standard, not the temperature.`);
}

export interface TypedWind {
  readonly from: Degrees;
  readonly speed: Knots;
}

/** `220/30`, `220/30 kt`, `calm`: degrees from where it blows, and knots. */
export function parseWind(text: string): Result<TypedWind, NumberProblem> {
  const said = tidy(text).toLowerCase();
  if (said === 'calm') return ok({ from: degrees(360), speed: knots(0) });
  const found = said.match(/^(?<from>\d{3})°? ?\/ ?(?<speed>\d{1,3})(?: ?(?:kt|kts))?$/);
  if (!found) {
    return refuse(`"${tidy(text)}" is no wind: type three figures of direction and the knots, such as 220/30 or calm.`);
  }
  const from = Number(found.groups?.from);
  if (from > 360) return refuse(`${from}° is no direction: type 001 to 360.`);
  return ok({ from: degrees(from === 0 ? 360 : from), speed: knots(Number(found.groups?.speed)) });
}

/** Settings that altimeters are set to; outside is a slip of the finger. */
export const LOWEST_SETTING: Hectopascals = hectopascals(870);
export const HIGHEST_SETTING: Hectopascals = hectopascals(1085);

/** `1013`, `29.92`, `1013 hPa`, `29.92 inHg`, `Q1013`, `A2992`, `QNH 1013`. A bare number has the fleet's unit. */
export function parseSetting(text: string, fleet: FleetUnits): Result<Hectopascals, NumberProblem> {
  const said = tidy(text).replace(/^(?:QNH|QFE) ?/i, '');
  const report = said.match(/^(?<kind>[QA]) ?(?<figures>\d{4})$/i)?.groups;
  if (report) {
    const figures = Number(report.figures);
    const inches = report.kind?.toUpperCase() === 'A';
    return plausible(
      inches ? inchesToHectopascals(inchesOfMercury(figures / 100)) : hectopascals(figures),
      said,
      fleet,
    );
  }
  const read = parseQuantity(PRESSURE, said, { unit: fleet.pressure, least: LOWEST_SETTING, most: HIGHEST_SETTING });
  return read.ok ? ok(hectopascals(read.value.value)) : read;
}

function plausible(value: Hectopascals, said: string, fleet: FleetUnits): Result<Hectopascals, NumberProblem> {
  if (value >= LOWEST_SETTING && value <= HIGHEST_SETTING) return ok(value);
  const [least, most] = [formatPressure(LOWEST_SETTING, fleet), formatPressure(HIGHEST_SETTING, fleet)];
  return refuse(`${said} is no altimeter setting: type one from ${least} to ${most}.`);
}

/** `14:05Z`, `14:05`, `1405Z`: a time of day, UTC, as minutes since midnight. Local times are not known here. */
export function parseTime(text: string): Result<Minutes, NumberProblem> {
  const said = tidy(text).toUpperCase();
  const found = said.match(/^(?<hours>\d{2}):?(?<minutes>\d{2}) ?(?<zone>Z|UTC)?$/)?.groups;
  const total = Number(found?.hours) * 60 + Number(found?.minutes);
  if (!found || Number(found.hours) > 23 || Number(found.minutes) > 59) {
    return refuse(`"${tidy(text)}" is no time of day: type hours and minutes in UTC, such as 14:05Z.`);
  }
  if (!said.includes(':') && found.zone === undefined) {
    const offer = formatTime(new Date(total * 60_000));
    return refuse(`"${said}" may be a number: type ${offer} for a time of day.`, offer);
  }
  return ok(minutes(total));
}
