'use client';
import { memo, useMemo } from 'react';
import type { Recording } from '../../../../lib/flight/recording.ts';
import type { Trace } from '../../../../lib/flight/trace.ts';
import { formatNumber, formatSeconds } from '../../../../lib/units/format.ts';
import type { Seconds } from '../../../../lib/units/quantity.ts';
import { Chart, Grid, Key, Rows } from './chart-parts.tsx';
import css from './charts.module.css';
import { useCursorTime, useDrag } from './cursor.tsx';
import { round10, stops } from './events.ts';
import { HEIGHT_HEIGHT, heightShape } from './height-shape.ts';
import { momentAtDistance, valueAt } from './rows.ts';
import type { Axis } from './time-axis.ts';

type Props = {
  trace: Trace;
  width: number;
  other: { readonly trace: Trace; readonly name: string } | null;
  recording: Recording | null;
  shift: number;
  name: string;
  label: (step: string) => string;
};

export const HeightChart = memo(function HeightChart({ trace, width, other, recording, shift, name, label }: Props) {
  const shape = useMemo(
    () => heightShape(trace, width, other?.trace ?? null, recording, shift, label),
    [trace, width, other, recording, shift, label],
  );
  const drag = useDrag((place) => momentAtDistance(trace, shape.x.value(place)));
  const bottom = HEIGHT_HEIGHT - 34;
  const ground = shape.y.place(0);
  const gatesAt = (time: number) =>
    trace.events
      .filter((event) => event.kind === 'gate' && Math.abs(event.time - time) < 0.06)
      .map((event) => label(event.step ?? ''))
      .join(', ');
  return (
    <Chart
      title="Height against distance"
      says={
        <Key
          lines={[
            [css.flown, `height above the aerodrome, ${name}; rings where the cue of a step came true`],
            other && [css.was, `height, ${other.name}`],
            recording && [css.recorded, 'height as recorded'],
          ]}
        />
      }
      table={() => (
        <Rows
          heads={['Time', 'Distance, NM', 'Height, ft AAL', 'Vertical speed, ft/min', 'Cues that came true']}
          rows={stops(trace).map((time) => [
            formatSeconds(time as Seconds),
            formatNumber(valueAt(trace.samples, 'distance', time) ?? 0, 1),
            formatNumber(round10(valueAt(trace.samples, 'height', time) ?? 0)),
            formatNumber(round10(valueAt(trace.samples, 'verticalSpeed', time) ?? 0)),
            gatesAt(time),
          ])}
        />
      )}
    >
      <svg
        viewBox={`0 0 ${width} ${HEIGHT_HEIGHT}`}
        className={css.chart}
        role="img"
        aria-label={`Height against distance, ${name}: ${shape.gates.length} moments at which cues came true. The figures follow in a table.`}
        {...drag}
      >
        <Grid x={shape.x} y={shape.y} width={width} bottom={bottom} across="NM" up="ft AAL" />
        <line
          x1={shape.x.place(shape.x.from)}
          x2={shape.x.place(shape.x.to)}
          y1={ground}
          y2={ground}
          className={css.ground}
        />
        <path d={shape.other} className={css.was} />
        <path d={shape.recorded} className={css.recorded} />
        <path d={shape.path} className={css.flown} data-flown="height" />
        {shape.gates.map((gate) => (
          <g key={gate.time}>
            <circle cx={gate.x} cy={gate.y} r={3.2} className={css.gate} />
            {gate.name !== '' && (
              <text x={gate.x + 7} y={gate.climbs || gate.y < 40 ? gate.y + 15 : gate.y - 8} className={css.name}>
                {gate.name}
              </text>
            )}
          </g>
        ))}
        <Dot trace={trace} x={shape.x} y={shape.y} bottom={bottom} />
      </svg>
    </Chart>
  );
});

function Dot({ trace, x, y, bottom }: { trace: Trace; x: Axis; y: Axis; bottom: number }) {
  const time = useCursorTime();
  const at = x.place(valueAt(trace.samples, 'distance', time) ?? 0);
  return (
    <g>
      <line x1={at} x2={at} y1={0} y2={bottom} className={css.cursor} />
      <circle cx={at} cy={y.place(valueAt(trace.samples, 'height', time) ?? 0)} r={4.5} className={css.dot} />
    </g>
  );
}
