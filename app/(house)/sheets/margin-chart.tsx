import css from './band-chart.module.css';
import { Grid } from './band-chart.tsx';
import type { DetentBand } from './band-figures.ts';
import { axes, BOX, marginPath, marginScale } from './band-shape.ts';

/** All detents in one: what is left below the limit of the next one, against what the policy wants. */
export function MarginChart({ bands, least }: { bands: readonly DetentBand[]; least: number }) {
  const points = bands[0]?.points ?? [];
  const on = axes(points, marginScale(bands, least));
  const last = points.at(-1);
  if (!last) return null;
  const right = BOX.width - BOX.right;
  return (
    <svg
      viewBox={`0 0 ${BOX.width} ${BOX.height}`}
      className={css.chart}
      role="img"
      aria-label="Limit of the next detent less VMM of the present one, by weight. The figures follow in tables."
    >
      <Grid on={on} />
      <rect
        x={BOX.left}
        width={right - BOX.left}
        y={on.y(least)}
        height={on.y(0) - on.y(least)}
        className={css.short}
      />
      <line x1={BOX.left} x2={right} y1={on.y(least)} y2={on.y(least)} className={css.nextLimit} />
      <text x={BOX.left + 6} y={on.y(least) + 13} className={css.name}>
        below the policy’s {least} kt
      </text>
      {bands.map((band) => {
        const first = points[0]!;
        const low = band.points[0]?.low;
        if (!band.next || low == null) return null;
        return (
          <g key={band.detent}>
            <path d={marginPath(band, on)} className={css.low} />
            <text x={on.x(first.weight) + 6} y={on.y(band.next.vfe - low) - 4} className={css.name}>
              {band.detent} to {band.next.detent}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
