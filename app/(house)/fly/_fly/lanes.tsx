'use client';
import { memo, useMemo } from 'react';
import { formatSeconds } from '../../../../lib/units/format.ts';
import type { Seconds } from '../../../../lib/units/quantity.ts';
import { Chart, Marks, Plot, Rows } from './chart-parts.tsx';
import css from './charts.module.css';
import { CursorLine, useDrag } from './cursor.tsx';
import { kindWord } from './events.ts';
import type { Flown } from './fly-one.ts';
import { BarLane, MoveLane } from './lane-bars.tsx';
import { LaneKey } from './lane-key.tsx';
import { MODE_AXES, type ModeAxis, modeSegments, transitLane, workBars } from './lanes-shape.ts';
import { ModeLane } from './mode-lane.tsx';
import { type Axis, RIGHT } from './time-axis.ts';

const NAMES: Readonly<Record<ModeAxis, string>> = {
  ...{ thrust: 'Thrust', lateral: 'Lateral', vertical: 'Vertical', armed: 'Armed' },
};
const MODE = 30;
const BAR = 26;
/** What the other version takes below a lane. */
const WAS = 17;

type Props = {
  flown: Flown;
  other: { readonly flown: Flown; readonly name: string } | null;
  x: Axis;
  width: number;
  label: (step: string) => string;
  name: string;
};

/** The score: one line for each mode axis, for what moves, for each pilot and for the voice. */
export const Lanes = memo(function Lanes({ flown, other, x, width, label, name }: Props) {
  const { trace, crew } = flown;
  const drag = useDrag(x.value);
  const lanes = useMemo(() => laneList(flown, other?.flown ?? null), [flown, other]);
  const height = lanes.reduce((sum, lane) => sum + lane.height, 0) + 34;
  let top = 0;
  return (
    <Chart
      title="Modes, levers, pilots and voice"
      says={<LaneKey other={other?.name ?? ''} />}
      table={() => (
        <>
          <Rows
            heads={['Time', 'What', 'Step', 'In words', 'Height, ft AAL', 'Speed, kt']}
            rows={trace.events.map((event) => [
              formatSeconds(event.time as Seconds),
              kindWord(event),
              label(event.step ?? ''),
              event.says,
              String(Math.round(event.height / 10) * 10),
              String(Math.round(event.speed)),
            ])}
          />
          <Rows
            heads={['Who', 'Does', 'Due', 'Begins', 'Over', 'Waits']}
            rows={crew.spans.map((span) => [
              span.duty.who ?? 'voice from outside',
              span.duty.does,
              ...[span.trigger, span.start, span.end].map((time) => `${time.toFixed(1)} s`),
              span.late > 0.05 ? `${span.late.toFixed(1)} s` : '–',
            ])}
          />
        </>
      )}
    >
      <svg
        viewBox={`0 0 ${width} ${height}`}
        className={css.chart}
        role="img"
        aria-label={`Over time, ${name}: ${trace.lines.length} mode lines, ${trace.transits.length} movements of flap and gear, ${crew.spans.length} things done or said, ${crew.collisions.length} that meet another voice. All of them follow in a table.`}
        {...drag}
      >
        {lanes.map((lane) => {
          const at = top;
          top += lane.height;
          return (
            <g key={lane.name} transform={`translate(0 ${at})`}>
              <line x1={0} x2={width - RIGHT} y1={lane.height} y2={lane.height} className={css.lane} />
              <text x={2} y={16} className={css.name}>
                {lane.name}
              </text>
              <Plot width={width} height={lane.height}>
                {lane.draw(x)}
              </Plot>
            </g>
          );
        })}
        <Marks x={x} bottom={height - 34} />
        <text x={width - RIGHT} y={height - 4} className={`${css.tick} ${css.end}`}>
          s
        </text>
        <Plot width={width} height={height - 34}>
          <CursorLine x={x} height={height - 34} />
        </Plot>
      </svg>
    </Chart>
  );
});

function laneList({ trace, crew }: Flown, was: Flown | null) {
  const more = was === null ? 0 : WAS;
  return [
    ...MODE_AXES.map((axis) => {
      const [now, before] = [modeSegments(trace, axis), was && modeSegments(was.trace, axis)];
      return {
        name: NAMES[axis],
        height: MODE + more,
        draw: (x: Axis) => <ModeLane x={x} now={now} was={before} />,
      };
    }),
    ...(['flap', 'gear'] as const).map((what) => {
      const [now, before] = [transitLane(trace, what), was && transitLane(was.trace, what)];
      return {
        name: what === 'flap' ? 'Flap' : 'Gear',
        height: BAR + more,
        draw: (x: Axis) => <MoveLane x={x} now={now} was={before} />,
      };
    }),
    ...(['PF', 'PM', 'voice'] as const).map((who) => {
      const [now, before] = [workBars(crew, who), was && workBars(was.crew, who)];
      return {
        name: who === 'voice' ? 'Voice' : who,
        height: BAR + more,
        draw: (x: Axis) => <BarLane x={x} now={now} was={before} />,
      };
    }),
  ];
}
