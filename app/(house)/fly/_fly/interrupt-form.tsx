'use client';
import { useState } from 'react';
import {
  INTERRUPTIONS,
  type Interruption,
  type InterruptionKind,
  sayInterruption,
} from '../../../../lib/flight/interruptions.ts';
import { Button } from '../../../_ui/button.tsx';
import { useCursorTime } from './cursor.tsx';
import css from './fly.module.css';

/** More than this at once is no flight any more. */
const MOST = 8;

/** The radio, the cabin or an alert, dropped where the cursor stands. */
export function InterruptForm(props: { all: readonly Interruption[]; onAll: (all: readonly Interruption[]) => void }) {
  const { all, onAll } = props;
  const [kind, setKind] = useState<InterruptionKind>('radio');
  const time = Math.round(useCursorTime());
  const next = 1 + all.reduce((most, { id }) => Math.max(most, Number(id.slice(1))), 0);
  return (
    <section className={`${css.box} no-print`} aria-label="Interrupt it">
      <h2>Interrupt it</h2>
      <label className={css.figureField}>
        <span>By what</span>
        <select value={kind} onChange={(event) => setKind(event.target.value as InterruptionKind)}>
          {INTERRUPTIONS.map((one) => (
            <option key={one} value={one}>
              {one}: {sayInterruption(one)}
            </option>
          ))}
        </select>
      </label>
      <div className={css.acts}>
        <Button disabled={all.length >= MOST} onClick={() => onAll([...all, { id: `i${next}`, kind, at: time }])}>
          Drop it at {time} s
        </Button>
      </div>
      {all.length === 0 ? (
        <p className="small">None yet. It comes where the cursor stands.</p>
      ) : (
        <ul className={css.dropped}>
          {all.map((one) => (
            <li key={one.id}>
              {one.kind} at {one.at} s{' '}
              <Button look="plain" onClick={() => onAll(all.filter((other) => other !== one))}>
                Take away
                <span className="unseen">
                  {' '}
                  {one.kind} at {one.at} s
                </span>
              </Button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
