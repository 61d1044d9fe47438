'use client';
import { useCallback, useMemo, useState } from 'react';
import type { Interruption } from '../../../../lib/flight/interruptions.ts';
import { weightRange } from '../../../../lib/flight/sweep.ts';
import type { OpenFlight } from '../../../../lib/server/flights.ts';
import { Notice } from '../../../_ui/notice.tsx';
import { Assumptions } from './assumptions.tsx';
import css from './charts.module.css';
import { ConditionsForm } from './conditions-form.tsx';
import { stepNames } from './events.ts';
import fly from './fly.module.css';
import { firstMeasure, type Given, type Ground } from './fly-one.ts';
import { HeightChart } from './height-chart.tsx';
import { InterruptForm } from './interrupt-form.tsx';
import { KeptRuns } from './kept-runs.tsx';
import { Lanes } from './lanes.tsx';
import { type Laid, LayOver } from './lay-over.tsx';
import { Outcome } from './outcome.tsx';
import { PlanView } from './plan-view.tsx';
import { Scrub } from './scrub.tsx';
import { SpeedChart } from './speed-chart.tsx';
import { timeAxis } from './time-axis.ts';
import { SpanChoice, useStretch } from './time-span.tsx';
import { TimedFindings } from './timed-findings.tsx';
import { useFlight, useSearch, useTimedChecks } from './use-fly.ts';
import { useWidth } from './use-width.ts';
import { WorstCase } from './worst-case.tsx';

/** The whole of it: conditions at the top, the score below them, and beside it what asks and answers. */
export function Board({ open, ground }: { open: OpenFlight; ground: Ground }) {
  const { procedure, sheet } = ground;
  const weights = useMemo(() => weightRange(procedure, sheet), [procedure, sheet]);
  const [given, setGiven] = useState<Given>({ weight: Math.round((weights.from + weights.to) / 200) * 100 });
  const [interruptions, setInterruptions] = useState<readonly Interruption[]>([]);
  const [against, setAgainst] = useState(false);
  const [laid, setLaid] = useState<Laid | null>(null);
  const [shift, setShift] = useState(0);
  const wanted = useMemo(() => ({ given, interruptions, against }), [given, interruptions, against]);
  const { flown, failed, pending } = useFlight(ground, wanted);
  const search = useSearch(ground, wanted);
  const timed = useTimedChecks(ground);
  const label = useMemo(() => stepNames(procedure), [procedure]);
  const [box, width] = useWidth<HTMLDivElement>(860);
  const show = useCallback((next: Given) => setGiven(next), []);
  const end = Math.max(flown?.now.trace.end.time ?? 0, flown?.was?.trace.end.time ?? 0);
  const [span, setSpan] = useState<number | null>(null);
  const from = useStretch(span, end);
  const x = useMemo(
    () => timeAxis(from, span === null ? end : Math.min(end, from + span), width),
    [from, span, end, width],
  );
  const was = flown?.was ?? null;
  const otherName = open.other?.name ?? '';
  const other = useMemo(
    () => (was === null ? null : { flown: was, trace: was.trace, name: otherName }),
    [was, otherName],
  );
  const form = (
    <ConditionsForm given={given} shown={flown?.now.trace.conditions ?? null} {...{ sheet, weights }} onGiven={show} />
  );
  const trouble = failed || search.failed;
  if (flown === null) {
    return (
      <>
        {trouble ? (
          <Notice kind="stop">{trouble} Reload the page to try again.</Notice>
        ) : (
          <p role="status">Flying it …</p>
        )}
        {form}
      </>
    );
  }
  const { trace } = flown.now;
  const shared = { trace, other, recording: laid?.recording ?? null, shift, name: open.name };
  return (
    <>
      <Assumptions open={open} trace={trace} />
      {form}
      {trouble && <Notice kind="stop">{trouble} What is drawn is of before.</Notice>}
      <Outcome trace={trace} near={search.near} label={label} />
      <div className={fly.board}>
        <div ref={box} className={css.charts} aria-busy={pending} data-took={Math.round(flown.took)}>
          <Scrub flown={flown.now} other={other}>
            <SpanChoice span={span} onSpan={setSpan} />
          </Scrub>
          <SpeedChart {...shared} x={x} width={width} />
          <Lanes flown={flown.now} other={other} x={x} width={width} label={label} name={open.name} />
          <HeightChart {...shared} width={width} label={label} />
          <PlanView trace={trace} procedure={procedure} width={width} />
        </div>
        <aside className={fly.side} aria-label="Worst case, findings and what is laid over">
          <WorstCase given={given} first={firstMeasure(procedure, sheet)} {...search} onGiven={show} />
          <TimedFindings {...timed} label={label} onGiven={show} />
          <InterruptForm all={interruptions} onAll={setInterruptions} />
          <LayOver
            other={otherName}
            {...{ against, laid, shift, trace }}
            onAgainst={setAgainst}
            onLaid={setLaid}
            onShift={setShift}
          />
          {open.kind === 'candidate' && (
            <KeptRuns
              open={open}
              given={given}
              says={search.sweep.kind === 'done' ? search.sweep.result.says : 'the flight as shown'}
              onGiven={show}
              replay={search.replay}
            />
          )}
        </aside>
      </div>
    </>
  );
}
