'use client';
import type { Trace } from '../../../../lib/flight/trace.ts';
import { formatNumber, formatSeconds, typeset } from '../../../../lib/units/format.ts';
import type { Seconds } from '../../../../lib/units/quantity.ts';
import { Button } from '../../../_ui/button.tsx';
import { Notice } from '../../../_ui/notice.tsx';
import { useCursor } from './cursor.tsx';
import css from './fly.module.css';
import type { Near } from './fly-worker.ts';

/** How the flight ended, what it could not do as written, and its figures with what the assumptions make of them. */
export function Outcome({ trace, near, label }: { trace: Trace; near: Near | null; label: (step: string) => string }) {
  const cursor = useCursor();
  const { end, problems } = trace;
  if (end.reason === 'refused') {
    return (
      <Notice kind="stop" word="Not flown." live>
        {typeset(end.says)} Nothing else was changed; put the condition right to fly again.
      </Notice>
    );
  }
  const bad = end.reason === 'time' || end.reason === 'limit' || end.reason === 'ground';
  return (
    <section className={css.outcome} aria-label="How it came out">
      <p role="status">
        {bad ? 'Flown up to' : 'Flown to its end at'} <b>{typeset(formatSeconds(end.time as Seconds))}</b>: {end.says}
        {bad && ' What was flown until then is drawn.'}
      </p>
      {near && (
        <ul className={css.bands}>
          {near.bands.map(({ says, unit, value, least, most }) => (
            <li key={says}>
              {says} <b>{typeset(sayBand(value, unit))}</b>{' '}
              <span className="small">
                ({typeset(sayBand(least, unit))} to {typeset(sayBand(most, unit))} with hands ±2 s, wind ±10 kt, drag ±5
                %)
              </span>
            </li>
          ))}
          {near.wait && (
            <li>
              longest wait <b>{near.wait.seconds.toFixed(1)} s</b>: {near.wait.does}{' '}
              <span className="small">
                ({near.wait.under}; durations {near.searched})
              </span>
            </li>
          )}
        </ul>
      )}
      {problems.length > 0 && (
        <details open={problems.length <= 4}>
          <summary>
            {problems.length === 1 ? 'One thing was' : `${problems.length} things were`} not flown as written
          </summary>
          <ul className={css.problems}>
            {problems.map(({ time, step, says }, place) => (
              <li key={place}>
                <Button look="plain" onClick={() => cursor.set(Math.min(time, end.time))}>
                  {typeset(formatSeconds(time as Seconds))}
                  {step === null || says.startsWith(label(step)) ? '' : `, ${label(step)}`}
                </Button>{' '}
                {typeset(says)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

const sayBand = (value: number, unit: string): string => {
  const step = unit === 'ft' ? 10 : 1;
  return `${formatNumber(Math.round(value / step) * step)} ${unit}`;
};
