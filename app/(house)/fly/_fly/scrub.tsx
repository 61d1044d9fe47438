'use client';
import type { KeyboardEvent, ReactNode } from 'react';
import { typeset } from '../../../../lib/units/format.ts';
import { useCursor, useCursorTime } from './cursor.tsx';
import { type Reading, readingAt, sayReading, stopFrom } from './events.ts';
import css from './fly.module.css';
import type { Flown } from './fly-one.ts';

type Props = { flown: Flown; other: { readonly flown: Flown; readonly name: string } | null; children: ReactNode };

/** The cursor as a slider over time, and what stands there. Page keys go from event to event. */
export function Scrub({ flown, other, children }: Props) {
  const { trace, crew } = flown;
  const cursor = useCursor();
  const time = Math.min(useCursorTime(), trace.end.time);
  const reading = readingAt(trace, crew, time);
  const was = other && readingAt(other.flown.trace, null, time);
  const keys = (event: KeyboardEvent<HTMLInputElement>): void => {
    const way = event.key === 'PageUp' ? 1 : event.key === 'PageDown' ? -1 : 0;
    const long = event.shiftKey && event.key.startsWith('Arrow') ? 10 : 0;
    if (way === 0 && long === 0) return;
    event.preventDefault();
    const forward = event.key === 'ArrowRight' || event.key === 'ArrowUp';
    cursor.set(
      way === 0
        ? Math.min(trace.end.time, Math.max(0, time + (forward ? long : -long)))
        : stopFrom(trace, time, way as 1 | -1),
    );
  };
  return (
    <div className={css.scrub}>
      <label className={css.time}>
        <span className="unseen">Moment of the flight; page keys go from event to event</span>
        <input
          type="range"
          min={0}
          max={Math.max(1, Math.ceil(trace.end.time * 10) / 10)}
          step={0.1}
          value={time}
          aria-valuetext={sayReading(reading)}
          onChange={(event) => cursor.set(Number(event.target.value))}
          onKeyDown={(event) => {
            const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
            if (step !== undefined && !event.shiftKey) {
              event.preventDefault();
              cursor.set(Math.min(trace.end.time, Math.max(0, Math.round(time) + step)));
            } else keys(event);
          }}
        />
      </label>
      {reading === null ? (
        <p>Nothing was flown.</p>
      ) : (
        <Line reading={reading} was={was ?? null} name={other?.name ?? ''} />
      )}
      {children}
    </div>
  );
}

function Line({ reading, was, name }: { reading: Reading; was: Reading | null; name: string }) {
  return (
    <p className={css.reading} data-reading>
      <b>{typeset(reading.time)}</b>{' '}
      {(['height', 'speed', 'band', 'rate', 'thrust', 'flap', 'gear'] as const).map((key) => (
        <span key={key}>
          {' '}
          {key === 'thrust' || key === 'flap' || key === 'gear' ? `${key} ` : ''}
          {typeset(reading[key])}
          {was !== null && was[key] !== reading[key] && key !== 'band' && (
            <i>
              {' '}
              ({name} {typeset(was[key])})
            </i>
          )}
        </span>
      ))}
      <span className="gate">{reading.modes}</span> <span>{reading.crew}</span>
    </p>
  );
}
