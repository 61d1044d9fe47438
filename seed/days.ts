import type { Clock } from '../lib/server/clock.ts';

const DAY_MS = 24 * 60 * 60_000;
const MINUTE_MS = 60_000;
const started = Date.now();

/** A clock that stands at that many days before this run, at 09:00Z and a minute later each time it is asked. */
export function dayAgo(days: number): Clock {
  const day = new Date(started - days * DAY_MS);
  let time = Date.UTC(day.getUTCFullYear(), day.getUTCMonth(), day.getUTCDate(), 9);
  return () => new Date(Math.min((time += MINUTE_MS), started));
}
