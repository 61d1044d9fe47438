import css from './band-chart.module.css';
import { Grid } from './band-chart.tsx';
import type { DetentBand } from './band-figures.ts';
import { axes, BOX, marginPath, marginScale, spread } from './band-shape.ts';

/** Room for the names beside the lines, and the height of one. */
const NAMES = 72;
const NAME = 13;

/** All detents in one: what is left below the limit of the next one, against what the policy wants. */
export function MarginChart({ bands, least }: { bands: readonly DetentBand[]; least: number }) {
  const on = axes(bands[0]?.points ?? [], marginScale(bands, least), NAMES);
  const right = BOX.width - NAMES;
  const lines = bands.flatMap((band) => {
    const low = band.points.at(-1)?.low;
    if (!band.next || low == null) return [];
    return [
      { name: `${band.detent} to ${band.next.detent}`, path: marginPath(band, on), end: on.y(band.next.vfe - low) },
    ];
  });
  const names = spread(
    lines.map((line) => line.end),
    NAME,
  );
  return (
    <svg
      viewBox={`0 0 ${BOX.width} ${BOX.height}`}
      className={css.chart}
      role="img"
      aria-label="Limit of the next detent less VMM of the present one, by weight. The figures follow in tables."
    >
      <Grid on={on} right={right} />
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
      {lines.map((line, at) => (
        <g key={line.name}>
          <path d={line.path} className={css.low} />
          <text x={right + 6} y={(names[at] ?? line.end) + 4} className={css.name}>
            {line.name}
          </text>
        </g>
      ))}
    </svg>
  );
}
