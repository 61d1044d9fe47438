// The shapes of the charts: lines and areas of speed against weight. Pure numbers to pure paths, the same on every machine.
import { scaleLinear } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { BandPoint, DetentBand } from './band-figures.ts';

export const BOX = { width: 330, height: 240, left: 40, right: 12, top: 12, bottom: 38 } as const;

export type Scale = { readonly from: number; readonly to: number };
export type Tick = { readonly at: number; readonly says: string };
type Known = { readonly weight: number; readonly low: number };

/** One scale for all detents, so that the charts can be read side by side. kt. Above it a band is drawn open. */
export function speedScale(bands: readonly DetentBand[]): Scale {
  const lows = bands.flatMap((band) => known(band.points).map((point) => point.low));
  const highs = bands.filter((band) => band.highName !== 'VMO').map((band) => band.high);
  const from = Math.floor((Math.min(...lows) - 5) / 10) * 10;
  return { from, to: Math.ceil((Math.max(...lows, ...highs) + 10) / 10) * 10 };
}

const round = (value: number): number => Math.round(value * 10) / 10;
const known = (points: readonly BandPoint[]): readonly Known[] =>
  points.flatMap(({ weight, low }) => (low === null ? [] : [{ weight, low }]));

/** `right`: what stays free beside the lines, for their names. */
export function axes(points: readonly BandPoint[], speeds: Scale, right: number = BOX.right) {
  const first = points[0]?.weight ?? 0;
  const last = points.at(-1)?.weight ?? 1;
  const x = scaleLinear([first, last], [BOX.left, BOX.width - right]);
  const y = scaleLinear([speeds.from, speeds.to], [BOX.height - BOX.bottom, BOX.top]);
  const ticks = (scale: typeof x, count: number, say: (value: number) => string): readonly Tick[] =>
    scale.ticks(count).map((value) => ({ at: round(scale(value)), says: say(value) }));
  return {
    x: (weight: number) => round(x(weight)),
    y: (speed: number) => round(y(Math.min(speeds.to, Math.max(speeds.from, speed)))),
    weights: ticks(x, 5, (kg) => String(kg / 1000)),
    speeds: ticks(y, 6, String),
  };
}
export type Axes = ReturnType<typeof axes>;

export function bandPaths(band: DetentBand, on: Axes) {
  const points = known(band.points);
  const between = (top: (point: Known) => number) =>
    area<Known>()
      .x((point) => on.x(point.weight))
      .y0((point) => on.y(point.low))
      .y1((point) => on.y(Math.max(point.low, top(point))))
      .digits(1);
  const vfe = band.next?.vfe;
  return {
    band: between(() => band.high)(points) ?? '',
    /** Where the next flap may be selected: above VMM of this detent, below the limit of the next. */
    next: vfe === undefined ? '' : (between(() => Math.min(band.high, vfe))(points.filter((p) => p.low <= vfe)) ?? ''),
    low: lowPath(points, on, (point) => point.low),
  };
}

/** VFE of the next detent less VMM of this one against weight. */
export function marginPath(band: DetentBand, on: Axes): string {
  const vfe = band.next?.vfe;
  return vfe === undefined ? '' : lowPath(known(band.points), on, (point) => vfe - point.low);
}

function lowPath(points: readonly Known[], on: Axes, speed: (point: Known) => number): string {
  return (
    line<Known>()
      .x((point) => on.x(point.weight))
      .y((point) => on.y(speed(point)))
      .digits(1)(points) ?? ''
  );
}

/** Moves the names of lines apart until none covers another, each as near to its line as the others leave it. */
export function spread(wanted: readonly number[], least: number): readonly number[] {
  const order = wanted.map((at, i) => ({ at, i })).sort((a, b) => a.at - b.at);
  for (let pass = 0; pass < order.length; pass++) {
    for (let k = 1; k < order.length; k++) {
      const [above, below] = [order[k - 1]!, order[k]!];
      const short = least - (below.at - above.at);
      if (short <= 0) continue;
      above.at -= short / 2;
      below.at += short / 2;
    }
  }
  return wanted.map((_, i) => round(order.find((one) => one.i === i)!.at));
}

export function marginScale(bands: readonly DetentBand[], least: number): Scale {
  const margins = bands.flatMap(({ next, points }) => (next ? known(points).map(({ low }) => next.vfe - low) : []));
  const from = Math.min(0, Math.floor(Math.min(...margins, 0) / 10) * 10);
  return { from, to: Math.ceil((Math.max(...margins, least) + 5) / 10) * 10 };
}
