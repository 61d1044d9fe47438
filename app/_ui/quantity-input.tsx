'use client';
import { useId, useState } from 'react';
import type { Measure } from '../../lib/units/measure.ts';
import { type Field, parseQuantity } from '../../lib/units/parse.ts';
import css from './field.module.css';

/** A quantity as a pilot types it. What was understood is said back; what is ambiguous is asked, never guessed. */
export function QuantityInput(props: {
  label: string;
  measure: Measure;
  field: Field;
  start?: string;
  onValue: (value: number | null) => void;
}) {
  const [typed, setTyped] = useState(props.start ?? '');
  const said = useId();
  const read = typed.trim() === '' ? null : parseQuantity(props.measure, typed, props.field);
  return (
    <label className={css.field}>
      <span>{props.label}</span>
      <input
        value={typed}
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={read?.ok === false}
        aria-describedby={said}
        onChange={(event) => {
          setTyped(event.target.value);
          const next =
            event.target.value.trim() === '' ? null : parseQuantity(props.measure, event.target.value, props.field);
          props.onValue(next?.ok ? next.value.value : null);
        }}
      />
      <span className={css.hint} id={said} aria-live="polite">
        {read ? (read.ok ? read.value.understood : read.error.sentence) : ''}
      </span>
    </label>
  );
}
