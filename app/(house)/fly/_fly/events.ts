// Moments that the cursor stops at, and what stands at a moment in words.

import type { Timeline } from '../../../../lib/flight/timeline.ts';
import type { FlightEvent, Trace } from '../../../../lib/flight/trace.ts';
import { allSteps, type Procedure } from '../../../../lib/procedure/procedure.ts';
import { formatHeight, formatNumber, formatRate, formatSeconds } from '../../../../lib/units/format.ts';
import type { Feet, FeetPerMinute, Seconds } from '../../../../lib/units/quantity.ts';
import { rowAt, valueAt } from './rows.ts';

/** Moments nearer than this are one, s. */
const SAME = 0.05;

export function stops({ events, end }: Trace): readonly number[] {
  const found: number[] = [0];
  for (const { time } of events) if (time - found.at(-1)! > SAME) found.push(time);
  if (end.time - found.at(-1)! <= SAME && found.length > 1) found.pop();
  if (end.time > 0) found.push(end.time);
  return found;
}

/** The next event behind a moment, or the one before it. */
export function stopFrom(trace: Trace, moment: number, way: 1 | -1): number {
  const all = stops(trace);
  const next = way === 1 ? all.find((time) => time > moment + SAME) : all.findLast((time) => time < moment - SAME);
  return next ?? (way === 1 ? trace.end.time : 0);
}

export const round10 = (value: number): number => Math.round(value / 10) * 10 + 0;

/** Figures at a moment, rounded to 1 kt, 10 ft, 10 ft/min and 1 s. */
export type Reading = {
  readonly time: string;
  readonly height: string;
  readonly speed: string;
  readonly band: string;
  readonly rate: string;
  readonly thrust: string;
  readonly flap: string;
  readonly gear: string;
  readonly modes: string;
  readonly crew: string;
};

export function readingAt(trace: Trace, crew: Timeline | null, moment: number): Reading | null {
  const { samples, detents } = trace;
  if (samples.time.length === 0) return null;
  const at = (name: Parameters<typeof valueAt>[1]): number => valueAt(samples, name, moment)!;
  const row = rowAt(samples, moment);
  const line = trace.lines.findLast(({ from }) => from <= moment + 1e-6)?.line;
  const [speed, floor, ceiling] = [at('speed'), at('floor'), at('ceiling')];
  const moving = trace.transits.find(
    ({ what, begins, ends }) => what === 'flap' && begins <= moment && (ends === null || ends > moment),
  );
  const gear = samples.gear[row]!;
  return {
    time: formatSeconds(moment as Seconds),
    height: formatHeight(round10(at('height')) as Feet, 'AAL'),
    speed: `${formatNumber(speed)} kt`,
    band: bandWords(speed, floor, ceiling),
    rate: formatRate(round10(at('verticalSpeed')) as FeetPerMinute),
    thrust: `${formatNumber(at('thrust'))} %`,
    flap: moving === undefined ? (detents[samples.detent[row]!] ?? '') : `${moving.from} → ${moving.to}`,
    gear: gear <= 0.01 ? 'up' : gear >= 0.99 ? 'down' : 'in transit',
    modes:
      line === undefined
        ? ''
        : `${line.thrust} · ${line.lateral} · ${line.vertical}, ${line.armed.length === 0 ? 'nothing armed' : `armed ${[...line.armed].sort().join(', ')}`}`,
    crew: crew === null ? '' : workWords(crew, moment),
  };
}

function bandWords(speed: number, floor: number, ceiling: number): string {
  if (!Number.isFinite(floor) || !Number.isFinite(ceiling)) return 'no band';
  const band = `band ${formatNumber(floor)} to ${formatNumber(ceiling)} kt`;
  if (speed > ceiling + 0.5) return `${band}, ${formatNumber(speed - ceiling)} kt above it`;
  if (speed < floor - 0.5) return `${band}, ${formatNumber(floor - speed)} kt below it`;
  const [low, high] = [speed - floor, ceiling - speed];
  return `${band}, ${formatNumber(Math.max(0, Math.min(low, high)))} kt ${low < high ? 'above its floor' : 'to its limit'}`;
}

function workWords({ spans }: Timeline, moment: number): string {
  const busy = spans.filter(({ start, end }) => start <= moment && end > moment);
  if (busy.length === 0) return 'both pilots free';
  return busy.map(({ duty }) => `${duty.who ?? 'voice'}: ${duty.does}`).join(' · ');
}

/** The whole reading as one sentence, for those who hear the cursor. */
export function sayReading(reading: Reading | null): string {
  if (reading === null) return 'nothing was flown';
  const { time, height, speed, band, rate, thrust, flap, gear, modes, crew } = reading;
  return `${time}: ${height}, ${speed}, ${band}, ${rate}, thrust ${thrust}, flap ${flap}, gear ${gear}, ${modes}${crew === '' ? '' : `; ${crew}`}`;
}

/** Label of a step by its id, as a person names it. */
export function stepNames(procedure: Procedure): (id: string) => string {
  const names = new Map<string, string>(
    allSteps(procedure).map((step, place) => [step.id, step.label || `step ${place + 1}`]),
  );
  return (id) => names.get(id) ?? '';
}

const KIND: Readonly<Record<FlightEvent['kind'], string>> = {
  ...{
    start: 'start',
    gate: 'cue true',
    act: 'hand',
    done: 'done',
    mode: 'modes',
    flap: 'flap lever',
    'flap-there': 'flap there',
  },
  ...{
    gear: 'gear lever',
    'gear-there': 'gear there',
    target: 'target',
    limit: 'band',
    mark: 'watched for',
    end: 'end',
  },
};
export const kindWord = ({ kind, who }: FlightEvent): string =>
  kind === 'mode' && who !== null ? `${KIND[kind]}, ${who === 'crew' ? 'by the crew' : who}` : KIND[kind];
