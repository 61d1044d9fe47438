'use client';
import { useMemo, useState } from 'react';
import type { Trace } from '../../../../lib/flight/trace.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import { formatNumber, typeset } from '../../../../lib/units/format.ts';
import { Notice } from '../../../_ui/notice.tsx';
import { Chart, Grid, Key, Rows } from './chart-parts.tsx';
import css from './charts.module.css';
import { useCursorTime } from './cursor.tsx';
import fly from './fly.module.css';
import { PlanFields } from './plan-fields.tsx';
import { alongTrack, type PlanFrame, type PlanPoint, planFrame } from './plan-shape.ts';
import { FIELDS, type Planned, planned, type Way, wayOf } from './plan-ways.ts';
import { drawnRows, rowAt } from './rows.ts';

type Props = { trace: Trace; procedure: Procedure; width: number };

/** From above: the track flown, a way around weather, or a leg direct to a waypoint. */
export function PlanView({ trace, procedure, width }: Props) {
  const [way, setWay] = useState<Way>(wayOf(procedure));
  const [side, setSide] = useState<'left' | 'right'>('left');
  const [amounts, setAmounts] = useState(() =>
    Object.fromEntries(
      (['around', 'direct'] as const).map((one) => [
        one,
        Object.fromEntries(FIELDS[one].map(({ name, start }) => [name, start])),
      ]),
    ),
  );
  const plan = useMemo(() => (way === 'flown' ? null : planned(way, amounts[way]!, side)), [way, amounts, side]);
  return (
    <section aria-label="Plan view" className={fly.plan}>
      <label className={`${fly.figureField} no-print`}>
        <span>Seen from above</span>
        <select value={way} onChange={(event) => setWay(event.target.value as Way)}>
          <option value="flown">the track as flown</option>
          <option value="around">around weather and back</option>
          <option value="direct">direct to a waypoint</option>
        </select>
      </label>
      {way !== 'flown' && (
        <PlanFields
          way={way}
          amounts={amounts[way]!}
          side={side}
          onSide={setSide}
          onAmounts={(next) => setAmounts({ ...amounts, [way]: next })}
        />
      )}
      {plan === null ? <Track trace={trace} width={width} /> : <Plan plan={plan} width={width} />}
    </section>
  );
}

function Track({ trace, width }: { trace: Trace; width: number }) {
  const { samples, conditions } = trace;
  const { frame, points } = useMemo(() => {
    const all = alongTrack(samples.east, samples.north, conditions.track);
    const rows = drawnRows(samples, ['east', 'north'], 500);
    return { points: all, frame: { ...planFrame(all, width), line: rows.map((row) => all[row]!) } };
  }, [samples, conditions.track, width]);
  const straight = points.every(({ right }) => Math.abs(right) < 0.05);
  if (straight) return <p className="small">The track as flown is straight: no turn is drawn.</p>;
  return (
    <Chart
      title="Track from above"
      says={<Key lines={[[css.flown, 'track over the ground']]} />}
      table={() => (
        <Rows
          heads={['Time, s', 'Along, NM', 'Right, NM']}
          rows={points
            .map((point, row) => [samples.time[row]!, point] as const)
            .filter((_, row) => row % 10 === 0)
            .map(([time, { along, right }]) => [formatNumber(time), formatNumber(along, 1), formatNumber(right, 1)])}
        />
      )}
    >
      <svg
        viewBox={`0 0 ${width} ${frame.height}`}
        className={css.chart}
        role="img"
        aria-label="Track over the ground from above. The figures follow in a table."
      >
        <Grid
          x={frame.x}
          y={frame.y}
          width={width}
          bottom={frame.height - 34}
          across="NM along the first track"
          up="NM right"
        />
        <path d={frame.path(frame.line)} className={css.flown} />
        <Here trace={trace} points={points} frame={frame} />
      </svg>
    </Chart>
  );
}

function Here({ trace, points, frame }: { trace: Trace; points: readonly PlanPoint[]; frame: PlanFrame }) {
  const at = points[rowAt(trace.samples, useCursorTime())];
  return at === undefined ? null : (
    <circle cx={frame.x.place(at.along)} cy={frame.y.place(at.right)} r={4.5} className={css.dot} />
  );
}

function Plan({ plan, width }: { plan: Planned; width: number }) {
  const { path, names, route, cell, says, refused } = plan;
  const all = [...path, ...route, ...(cell ? [cell.from, cell.to] : [])];
  const frame = planFrame(all, width);
  return (
    <>
      {refused !== '' && (
        <Notice kind="answer" live>
          {refused}
        </Notice>
      )}
      {all.length > 0 && (
        <Chart
          title="Plan from above"
          says={<Key lines={[[css.flown, 'planned'], route.length > 0 ? [css.was, 'track or route'] : null]} />}
          table={() => (
            <Rows
              heads={['Point', 'Along, NM', 'Right of track, NM']}
              rows={names.map(({ name, along, right }) => [name, formatNumber(along, 1), formatNumber(right, 1)])}
            />
          )}
        >
          <svg
            viewBox={`0 0 ${width} ${frame.height}`}
            className={css.chart}
            role="img"
            aria-label="The plan from above. Its points follow in a table, its figures in sentences."
          >
            <Grid x={frame.x} y={frame.y} width={width} bottom={frame.height - 34} across="NM along" up="NM right" />
            {cell && <rect {...frame.box(cell.from, cell.to)} className={fly.cell} rx={3} />}
            <path d={frame.path(route)} className={css.was} />
            <path d={frame.path(path)} className={css.flown} />
            {names.map(({ name, along, right }) => (
              <g key={name}>
                <circle cx={frame.x.place(along)} cy={frame.y.place(right)} r={3.5} className={css.gate} />
                <text x={frame.x.place(along) + 5} y={frame.y.place(right) + 16} className={css.name}>
                  {name}
                </text>
              </g>
            ))}
          </svg>
        </Chart>
      )}
      <ul>
        {says.map((line) => (
          <li key={line}>{typeset(line)}</li>
        ))}
      </ul>
    </>
  );
}
