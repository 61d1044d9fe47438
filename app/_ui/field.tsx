import type { ComponentProps, ReactNode } from 'react';
import css from './field.module.css';

type Common = { label: string; hint?: ReactNode };

export function Field({ label, hint, ...rest }: Common & ComponentProps<'input'>) {
  return (
    <label className={css.field}>
      <span>{label}</span>
      {hint && <span className={css.hint}>{hint}</span>}
      <input {...rest} />
    </label>
  );
}

export function LongField({ label, hint, ...rest }: Common & ComponentProps<'textarea'>) {
  return (
    <label className={css.field}>
      <span>{label}</span>
      {hint && <span className={css.hint}>{hint}</span>}
      <textarea {...rest} />
    </label>
  );
}

export function Choice({ label, hint, children, ...rest }: Common & ComponentProps<'select'>) {
  return (
    <label className={css.field}>
      <span>{label}</span>
      {hint && <span className={css.hint}>{hint}</span>}
      <select {...rest}>{children}</select>
    </label>
  );
}

export const formClass = css.form;
export const rowClass = css.row;
