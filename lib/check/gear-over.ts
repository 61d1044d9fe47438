// Where a flight goes over a limit of the gear.
import type { Trace } from '../flight/trace.ts';
import type { Moment } from './finding.ts';
import { eventMoment, knots } from './flown-worst.ts';

export const [RETRACT, EXTEND] = ['VLO for retraction', 'VLO for extension'];
type Over = { readonly by: number; readonly moment: Moment; readonly limit: string; readonly step: string };

/** Where a flight goes furthest over a limit of the gear: at the lever, or later while it is not up. */
export function overOf(trace: Trace, extend: number, retract: number, extended: number): Over | null {
  let worst: Over | null = null;
  const take = (over: Over): void => {
    if (over.by > 0.05 && (worst === null || over.by > worst.by)) worst = over;
  };
  for (const event of trace.events) {
    if (event.kind !== 'gear') continue;
    const up = trace.transits.find(({ what, begins }) => what === 'gear' && begins === event.time)?.to === 'up';
    const limit = up ? retract : extend;
    const name = up ? RETRACT : EXTEND;
    take({
      by: event.speed - limit,
      moment: eventMoment(event),
      limit: `${name}, ${knots(limit)}`,
      step: event.step ?? '',
    });
  }
  const { samples } = trace;
  const lever = trace.events.find(({ kind }) => kind === 'gear')?.step ?? '';
  for (let row = 0; row < samples.time.length; row += 1) {
    if (samples.gear[row]! <= 0) continue;
    const speed = samples.speed[row]!;
    const moment = {
      time: samples.time[row]!,
      says: 'gear not up',
      height: samples.height[row]!,
      speed,
      verticalSpeed: samples.verticalSpeed[row]!,
    };
    take({ by: speed - extended, moment, limit: `VLE, ${knots(extended)}`, step: lever });
  }
  return worst;
}
