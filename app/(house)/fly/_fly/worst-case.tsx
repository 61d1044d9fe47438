'use client';
import { useState } from 'react';
import { formatNumber, typeset } from '../../../../lib/units/format.ts';
import { Button } from '../../../_ui/button.tsx';
import { ScrollBox } from '../../../_ui/scroll-box.tsx';
import { Rows } from './chart-parts.tsx';
import css from './fly.module.css';
import { type Given, MEASURES, type MeasureName } from './fly-one.ts';
import type { Sweeping } from './fly-worker.ts';
import type { Sweep } from './use-fly.ts';

type Props = {
  given: Given;
  first: MeasureName;
  sweep: Sweep;
  start: (asked: Sweeping) => void;
  stop: () => void;
  onGiven: (given: Given) => void;
};

/** Every weight flown, the worst one chosen and said why; it can be stopped. */
export function WorstCase({ given, first, sweep, start, stop, onGiven }: Props) {
  const [measure, setMeasure] = useState<MeasureName>(first);
  const [everywhere, setEverywhere] = useState(false);
  const [sensitive, setSensitive] = useState(false);
  const running = sweep.kind === 'running';
  return (
    <section className={`${css.box} no-print`} aria-label="Worst case">
      <h2>Worst case</h2>
      <label className={css.figureField}>
        <span>What is asked of every flight</span>
        <select value={measure} onChange={(event) => setMeasure(event.target.value as MeasureName)}>
          {Object.entries(MEASURES).map(([name, { says }]) => (
            <option key={name} value={name}>
              {says}
            </option>
          ))}
        </select>
      </label>
      <label className={css.tick}>
        <input type="checkbox" checked={everywhere} onChange={(event) => setEverywhere(event.target.checked)} />
        winds and temperatures of the envelope too
      </label>
      <label className={css.tick}>
        <input type="checkbox" checked={sensitive} onChange={(event) => setSensitive(event.target.checked)} />
        each again with ±2 s, ±10 kt, ±5 % drag
      </label>
      <div className={css.acts}>
        {running ? (
          <Button onClick={stop}>Stop</Button>
        ) : (
          <Button look="main" onClick={() => start({ given, measure, everywhere, sensitive })}>
            Find the worst case
          </Button>
        )}
      </div>
      <div role="status">
        {running && (
          <>
            <progress value={sweep.done} max={Math.max(1, sweep.of)} aria-label="Flights flown" />
            <p className="small">{sweep.of === 0 ? 'Starting …' : `${sweep.done} of ${sweep.of} flights flown`}</p>
          </>
        )}
        {sweep.kind === 'stopped' && <p>Stopped. Nothing was chosen; the flight shown is as before.</p>}
        {sweep.kind === 'done' && <Found sweep={sweep} given={given} onGiven={onGiven} />}
      </div>
    </section>
  );
}

function Found({
  sweep,
  given,
  onGiven,
}: { sweep: Extract<Sweep, { kind: 'done' }> } & Pick<Props, 'given' | 'onGiven'>) {
  const { cases, worst, says, ends } = sweep.result;
  const [open, setOpen] = useState(false);
  const measure = MEASURES[sweep.asked.measure];
  const tonnes = (kg: number): string => formatNumber(kg / 1000, 1);
  const told = (value: number | null): string => {
    const step = measure.unit === 'ft' ? 10 : 1;
    return value === null ? '–' : `${formatNumber(Math.round(value / step) * step)} ${measure.unit}`;
  };
  const shown = worst !== null && worst.weight === given.weight && worst.wind === (given.wind ?? worst.wind);
  return (
    <>
      <p data-worst>
        <b>{typeset(says.charAt(0).toUpperCase() + says.slice(1))}</b>
        {worst?.band && ` (${told(worst.band.least)} to ${told(worst.band.most)} with the variations)`}.
      </p>
      {worst !== null && ends.length > 0 && ends.length <= 4 && (
        <p className="small">
          The ends alone would have said{' '}
          {ends.map((one) => `${told(one.value)} at ${tonnes(one.weight)} t`).join(' and ')}.
        </p>
      )}
      <p className="small">
        Checked over {cases.length} flights in {formatNumber(sweep.took)} ms.
      </p>
      {worst !== null && !shown && (
        <Button
          onClick={() => onGiven({ ...given, weight: worst.weight, wind: worst.wind, temperature: worst.temperature })}
        >
          Show it
        </Button>
      )}
      <details onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>All flights as a table</summary>
        {open && (
          <ScrollBox>
            <Rows
              heads={['Weight, t', 'Head wind, kt', '°C from standard', measure.says, 'Not flown as written']}
              rows={cases.map((one) => [
                tonnes(one.weight),
                formatNumber(one.wind),
                formatNumber(one.temperature),
                `${told(one.value)}${one.band ? ` (${told(one.band.least)} to ${told(one.band.most)})` : ''}`,
                one.problem,
              ])}
            />
          </ScrollBox>
        )}
      </details>
    </>
  );
}
