'use client';
import { memo, useMemo } from 'react';
import type { Recording } from '../../../../lib/flight/recording.ts';
import type { Trace } from '../../../../lib/flight/trace.ts';
import { formatNumber, formatSeconds } from '../../../../lib/units/format.ts';
import type { Seconds } from '../../../../lib/units/quantity.ts';
import { Chart, Grid, Key, Plot, Rows } from './chart-parts.tsx';
import css from './charts.module.css';
import { CursorLine, useDrag } from './cursor.tsx';
import { stops } from './events.ts';
import { valueAt } from './rows.ts';
import { outside, SPEED_HEIGHT, speedShape } from './speed-shape.ts';
import { type Axis, LEFT } from './time-axis.ts';

type Props = {
  trace: Trace;
  x: Axis;
  width: number;
  other: { readonly trace: Trace; readonly name: string } | null;
  recording: Recording | null;
  shift: number;
  name: string;
};

export const SpeedChart = memo(function SpeedChart({ trace, x, width, other, recording, shift, name }: Props) {
  const shape = useMemo(
    () => speedShape(trace, x, other?.trace ?? null, recording, shift),
    [trace, x, other, recording, shift],
  );
  const drag = useDrag(x.value);
  const out = outside(trace);
  const bottom = SPEED_HEIGHT - 32;
  const last = trace.samples.time.length - 1;
  return (
    <Chart
      title="Speed in its band"
      says={
        <Key
          lines={[
            [css.flown, `speed, ${name}`],
            [css.band, 'band: from the lowest speed of the phase to the limit'],
            [css.ceiling, 'least of VFE indicated, VLE, VMO and MMO'],
            [css.floor, 'lowest speed of the phase'],
            [css.vmm, 'VMM of the flap indicated'],
            other && [css.was, `speed, ${other.name}`],
            recording && [css.recorded, 'speed as recorded'],
            out.length > 0 ? [css.out, 'outside the band'] : null,
          ]}
        />
      }
      table={() => (
        <Rows
          heads={['Time', 'Speed, kt', 'Lowest, kt', 'Limit, kt', 'VMM, kt', ...(other ? [`${other.name}, kt`] : [])]}
          rows={stops(trace).map((time) => [
            formatSeconds(time as Seconds),
            ...(['speed', 'floor', 'ceiling', 'vmm'] as const).map((column) =>
              knots(valueAt(trace.samples, column, time)),
            ),
            ...(other ? [knots(valueAt(other.trace.samples, 'speed', time))] : []),
          ])}
        />
      )}
    >
      <svg
        viewBox={`0 0 ${width} ${SPEED_HEIGHT}`}
        className={css.chart}
        role="img"
        aria-label={`Speed against time, ${name}: ${knots(trace.samples.speed[0] ?? null)} kt at the start, ${knots(trace.samples.speed[last] ?? null)} kt at the end, ${sayOut(out)}. The figures follow in a table.`}
        {...drag}
      >
        <Plot width={width} height={bottom}>
          <path d={shape.band} className={css.band} />
        </Plot>
        <Grid x={x} y={shape.y} width={width} bottom={bottom} across="s" up="kt" />
        <Plot width={width} height={bottom + 3}>
          <path d={shape.vmm} className={css.vmm} />
          <path d={shape.floor} className={css.floor} />
          <path d={shape.ceiling} className={css.ceiling} />
          <path d={shape.other} className={css.was} />
          <path d={shape.recorded} className={css.recorded} />
          <path d={shape.speed} className={css.flown} data-flown="speed" />
          {out.map(({ from, to }) => (
            <line key={from} x1={x.place(from) - 1} x2={x.place(to) + 1} y1={bottom} y2={bottom} className={css.out} />
          ))}
          {trace.samples.time.length === 0 && (
            <text x={LEFT + 10} y={SPEED_HEIGHT / 2} className={css.name}>
              Nothing was flown.
            </text>
          )}
          <CursorLine x={x} height={bottom} />
        </Plot>
      </svg>
    </Chart>
  );
});

const knots = (value: number | null): string => (value === null || !Number.isFinite(value) ? '–' : formatNumber(value));

function sayOut(out: ReturnType<typeof outside>): string {
  if (out.length === 0) return 'inside its band throughout';
  const said = out.map(({ from, to, side }) => `${side} it from ${Math.round(from)} to ${Math.round(to)} s`);
  return said.slice(0, 3).join(', ') + (said.length > 3 ? ` and ${said.length - 3} times more` : '');
}
