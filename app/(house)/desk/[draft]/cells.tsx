'use client';
import { type KeyboardEvent, useEffect, useState } from 'react';
import { setField } from '../../../../lib/document/edit.ts';
import type { Holder } from '../../../../lib/document/model.ts';
import { useCell, useDraft } from '../_draft/use-draft.ts';
import css from './cells.module.css';
import { useEditing } from './editing.ts';

type CellProps = {
  holder: Holder;
  field: string;
  label: string;
  hint?: string;
  gate?: boolean;
  quoted?: boolean;
  onKeyDown?: (event: KeyboardEvent) => void;
};

/** One wording, typed in place and shared while it is typed. React never writes its text. */
export function TextCell({ holder, field, label, hint, gate, quoted, onKeyDown }: CellProps) {
  const { may, refuse } = useEditing();
  const ref = useCell<HTMLSpanElement>(holder, field, refuse);
  const classes = [css.cell, gate && css.gate, quoted && css.quoted].filter(Boolean).join(' ');
  return (
    <span
      ref={ref}
      role="textbox"
      tabIndex={0}
      aria-label={label}
      aria-readonly={!may.write}
      contentEditable={may.write ? 'plaintext-only' : false}
      suppressContentEditableWarning
      spellCheck={!gate}
      data-field={field}
      data-hint={hint ?? label}
      className={classes}
      onKeyDown={(event) => {
        onKeyDown?.(event);
        if (event.key === 'Enter' && !event.defaultPrevented) event.preventDefault();
      }}
    />
  );
}

/** One value out of a list. */
export function ChoiceCell(props: {
  holder: Holder;
  field: string;
  label: string;
  value: string;
  of: readonly string[];
  none?: string;
}) {
  const { doc, hand, point } = useDraft();
  const { may } = useEditing();
  const { holder, field, value } = props;
  const row = holder.in === 'meta' ? 'meta' : holder.id;
  return (
    <select
      className={css.choice}
      aria-label={props.label}
      data-field={field}
      value={value}
      disabled={!may.write}
      onFocus={() => point({ row, field, caret: null })}
      onBlur={() => point(null)}
      onChange={(event) => setField(doc, hand, holder, field, event.target.value)}
    >
      <option value="">{props.none ?? '–'}</option>
      {value !== '' && !props.of.includes(value) && <option>{value}</option>}
      {props.of.map((one) => (
        <option key={one}>{one}</option>
      ))}
    </select>
  );
}

/** A value that is typed as words: taken over when the caret leaves, so that nobody sees it half typed. */
export function ValueCell<T>(props: {
  holder: Holder;
  field: string;
  label: string;
  value: T;
  write: (value: T) => string;
  /** null: it can't be read; the sentence says why and the words stay. */
  read: (typed: string) => { value: T } | { sentence: string };
  suggestions?: readonly string[];
  hint?: string;
}) {
  const { doc, hand, point } = useDraft();
  const { may } = useEditing();
  const { holder, field, value, write, read } = props;
  const row = holder.in === 'meta' ? 'meta' : holder.id;
  const stored = write(value);
  const [typed, setTyped] = useState(stored);
  const [busy, setBusy] = useState(false);
  const [sentence, setSentence] = useState('');
  useEffect(() => {
    if (!busy) setTyped(stored);
  }, [stored, busy]);
  const commit = () => {
    const said = read(typed);
    if ('sentence' in said) {
      setSentence(said.sentence);
      return;
    }
    setSentence('');
    setField(doc, hand, holder, field, said.value);
  };
  const list = props.suggestions ? `of-${row}-${field}` : undefined;
  return (
    <span className={css.value}>
      <input
        aria-label={props.label}
        aria-invalid={sentence !== ''}
        placeholder={props.hint ?? props.label}
        data-field={field}
        list={list}
        value={typed}
        readOnly={!may.write}
        onFocus={() => {
          setBusy(true);
          point({ row, field, caret: null });
        }}
        onBlur={() => {
          setBusy(false);
          point(null);
          commit();
        }}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
        }}
      />
      {list && (
        <datalist id={list}>
          {props.suggestions!.map((one) => (
            <option key={one} value={one} />
          ))}
        </datalist>
      )}
      {sentence && <span className={css.wrong}>{sentence}</span>}
    </span>
  );
}
