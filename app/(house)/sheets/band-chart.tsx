import css from './band-chart.module.css';
import type { DetentBand } from './band-figures.ts';
import { type Axes, axes, BOX, bandPaths, type Scale } from './band-shape.ts';

/** One detent: its band by weight, and in it the part below the limit of the next detent. */
export function BandChart({ band, speeds }: { band: DetentBand; speeds: Scale }) {
  const on = axes(band.points, speeds);
  const paths = bandPaths(band, on);
  const right = BOX.width - BOX.right;
  const open = band.high > speeds.to;
  const middle = band.points[Math.floor(band.points.length * 0.62)];
  return (
    <svg viewBox={`0 0 ${BOX.width} ${BOX.height}`} className={css.chart} role="img" aria-label={said(band)}>
      <Grid on={on} />
      <path d={paths.band} className={css.band} />
      <path d={paths.next} className={css.inner} />
      {!open && <line x1={BOX.left} x2={right} y1={on.y(band.high)} y2={on.y(band.high)} className={css.limit} />}
      {band.next && (
        <line x1={BOX.left} x2={right} y1={on.y(band.next.vfe)} y2={on.y(band.next.vfe)} className={css.nextLimit} />
      )}
      <path d={paths.low} className={css.low} />
      <text x={BOX.left + 6} y={on.y(band.high) + (open ? 14 : -4)} className={css.name}>
        {open ? `open to ${band.highName} ${band.high}` : `${band.highName} ${band.high}`}
      </text>
      {band.next && (
        <text x={right - 4} y={on.y(band.next.vfe) - 4} className={`${css.name} ${css.end}`}>
          VFE {band.next.detent} {band.next.vfe}
        </text>
      )}
      {middle?.low != null && (
        <text x={on.x(middle.weight)} y={on.y(middle.low) + 16} className={css.name}>
          VMM {band.detent}
        </text>
      )}
    </svg>
  );
}

export function Grid({ on, right = BOX.width - BOX.right }: { on: Axes; right?: number }) {
  const bottom = BOX.height - BOX.bottom;
  return (
    <g>
      {on.speeds.map((tick) => (
        <g key={tick.says}>
          <line x1={BOX.left} x2={right} y1={tick.at} y2={tick.at} className={css.grid} />
          <text x={BOX.left - 6} y={tick.at + 4} className={`${css.tick} ${css.end}`}>
            {tick.says}
          </text>
        </g>
      ))}
      {on.weights.map((tick) => (
        <g key={tick.says}>
          <line x1={tick.at} x2={tick.at} y1={bottom} y2={bottom + 4} className={css.axis} />
          <text x={tick.at} y={bottom + 16} className={`${css.tick} ${css.middle}`}>
            {tick.says}
          </text>
        </g>
      ))}
      <line x1={BOX.left} x2={right} y1={bottom} y2={bottom} className={css.axis} />
      <text x={right} y={BOX.height - 4} className={`${css.tick} ${css.end}`}>
        weight, t
      </text>
      <text x={4} y={BOX.height - 4} className={css.tick}>
        kt
      </text>
    </g>
  );
}

function said(band: DetentBand): string {
  const first = band.points[0]?.low;
  const last = band.points.at(-1)?.low;
  const low = first == null || last == null ? 'not given' : `${first.toFixed(0)} to ${last.toFixed(0)} kt`;
  return `Band of ${band.detent} by weight: VMM ${low}, up to ${band.highName} ${band.high} kt. The figures follow in a table.`;
}
