'use client';
import { useEffect, useState } from 'react';
import { useCursor } from './cursor.tsx';
import css from './fly.module.css';
import { stretchAround } from './time-axis.ts';

const SPANS: readonly (readonly [number | null, string])[] = [
  [null, 'whole flight'],
  [60, '60 s'],
  [30, '30 s'],
];

/** How much of the flight is drawn over time. */
export function SpanChoice({ span, onSpan }: { span: number | null; onSpan: (span: number | null) => void }) {
  return (
    <fieldset className={`${css.spans} no-print`}>
      <legend className="unseen">Time shown</legend>
      {SPANS.map(([seconds, says]) => (
        <label key={says}>
          <input type="radio" name="span" checked={span === seconds} onChange={() => onSpan(seconds)} /> {says}
        </label>
      ))}
    </fieldset>
  );
}

/** Where the stretch that is drawn begins; it follows the cursor out of itself, and stays where it is otherwise. */
export function useStretch(span: number | null, end: number): number {
  const cursor = useCursor();
  const [from, setFrom] = useState(0);
  useEffect(() => {
    const follow = (): void => setFrom((before) => stretchAround(cursor.get(), span, end, before));
    follow();
    return cursor.subscribe(follow);
  }, [cursor, span, end]);
  return span === null ? 0 : from;
}
