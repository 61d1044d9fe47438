// Speed against time inside the band that moves with flap and gear: the lowest speed of the phase below, the limit above.
import { area, line } from 'd3-shape';
import type { Recording } from '../../../../lib/flight/recording.ts';
import type { Trace } from '../../../../lib/flight/trace.ts';
import { drawnRows } from './rows.ts';
import { type Axis, around, axis } from './time-axis.ts';

export const SPEED_HEIGHT = 260;
const [TOP, BOTTOM] = [12, 32];
/** Above the fastest speed flown a limit is drawn no further than this, kt: a clean limit would squeeze all flap bands. */
const OPEN = 45;
/** Rows in one path. */
const MOST = 900;

export type SpeedShape = {
  readonly y: Axis;
  readonly band: string;
  readonly ceiling: string;
  readonly floor: string;
  readonly vmm: string;
  readonly speed: string;
  readonly other: string;
  readonly recorded: string;
};

/** `shift`: s that a recording is moved by. */
export function speedShape(
  trace: Trace,
  x: Axis,
  other: Trace | null,
  recording: Recording | null,
  shift: number,
): SpeedShape {
  const { samples } = trace;
  const rows = drawnRows(samples, ['speed', 'ceiling', 'floor'], MOST);
  const recorded = (recording?.rows ?? []).filter((row) => row.speed !== null);
  const flown = [...samples.speed, ...(other?.samples.speed ?? []), ...recorded.map((row) => row.speed!)];
  const top = flown.reduce((most, speed) => Math.max(most, speed), 0) + OPEN;
  const limits = [...samples.ceiling, ...samples.floor].filter((speed) => speed <= top);
  const y = axis(around([...flown, ...limits], 10, 60), [SPEED_HEIGHT - BOTTOM, TOP], 6);
  const at = (row: number): number => x.place(samples.time[row]!);
  const path = (name: 'speed' | 'ceiling' | 'floor' | 'vmm', of: Trace = trace, which = rows): string =>
    line<number>()
      .defined((row) => Number.isFinite(of.samples[name][row]!) && of.samples[name][row]! <= y.to)
      .x((row) => x.place(of.samples.time[row]!))
      .y((row) => y.place(of.samples[name][row]!))
      .digits(1)(which) ?? '';
  return {
    y,
    band:
      area<number>()
        .defined((row) => Number.isFinite(samples.floor[row]!) && Number.isFinite(samples.ceiling[row]!))
        .x(at)
        .y0((row) => y.place(samples.floor[row]!))
        .y1((row) => y.place(Math.max(samples.floor[row]!, samples.ceiling[row]!)))
        .digits(1)(rows) ?? '',
    ceiling: path('ceiling'),
    floor: path('floor'),
    vmm: path('vmm'),
    speed: path('speed'),
    other: other === null ? '' : path('speed', other, drawnRows(other.samples, ['speed'], MOST)),
    recorded:
      line<(typeof recorded)[number]>()
        .x((row) => x.place(row.time! + shift))
        .y((row) => y.place(row.speed!))
        .digits(1)(recorded.filter((row) => row.time! + shift >= x.from && row.time! + shift <= x.to)) ?? '',
  };
}

/** Where the speed left the band, s: from and to of each stretch, for marks under the chart and for words. */
export function outside({
  samples,
}: Trace): readonly { readonly from: number; readonly to: number; readonly side: 'above' | 'below' }[] {
  const found: { from: number; to: number; side: 'above' | 'below' }[] = [];
  for (let row = 0; row < samples.time.length; row += 1) {
    const [speed, time] = [samples.speed[row]!, samples.time[row]!];
    const side = speed > samples.ceiling[row]! + 0.5 ? 'above' : speed < samples.floor[row]! - 0.5 ? 'below' : null;
    const last = found.at(-1);
    if (side === null) continue;
    if (last !== undefined && last.side === side && last.to === samples.time[row - 1]) last.to = time;
    else found.push({ from: time, to: time, side });
  }
  return found;
}
