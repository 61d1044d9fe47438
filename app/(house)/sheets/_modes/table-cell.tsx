'use client';
import { type KeyboardEvent, memo, useRef } from 'react';
import css from './table.module.css';

export const cellId = (row: string, cell: string): string => `${row}:${cell}`;

/** Focuses a cell, wherever it stands on the page. */
export function goToCell(row: string, cell: string): void {
  const element = document.getElementById(cellId(row, cell));
  element?.focus({ preventScroll: true });
  element?.scrollIntoView({ block: 'center', inline: 'nearest' });
}

/** Enter goes to the same cell of the next row, as in a spreadsheet; with Shift to the one before. */
function walk(event: KeyboardEvent<HTMLTextAreaElement>): void {
  if (event.key !== 'Enter' || event.ctrlKey || event.metaKey || event.nativeEvent.isComposing) return;
  event.preventDefault();
  const { column } = event.currentTarget.dataset;
  const all = [...document.querySelectorAll<HTMLElement>(`[data-column="${column}"]`)];
  all[all.indexOf(event.currentTarget) + (event.shiftKey ? -1 : 1)]?.focus();
}

/** One cell. `onSettled`: what it said when it was entered and when it was left, where that differs. */
export const TableCell = memo(function TableCell(props: {
  row: string;
  cell: string;
  label: string;
  text: string;
  was: string | undefined;
  says: string | undefined;
  onTyped: (row: string, cell: string, words: string) => void;
  onSettled?: ((was: string, is: string) => void) | undefined;
  className?: string | undefined;
}) {
  const { row, cell, label, text, was, says, onTyped, onSettled, className } = props;
  const entered = useRef(text);
  return (
    <textarea
      id={cellId(row, cell)}
      data-column={`${row.replace(/-.*$/, '')} ${cell}`}
      className={[css.cell, className, was === text ? '' : css.changed].filter(Boolean).join(' ')}
      rows={1}
      aria-label={label}
      aria-invalid={says ? true : undefined}
      aria-describedby={says ? `${cellId(row, cell)}:says` : undefined}
      spellCheck={false}
      value={text}
      onKeyDown={walk}
      onChange={(event) => onTyped(row, cell, event.target.value.replaceAll('\n', ' '))}
      onFocus={() => {
        entered.current = text;
      }}
      onBlur={() => {
        if (entered.current !== text) onSettled?.(entered.current, text);
      }}
    />
  );
});

/** What is wrong with the cells of a row, a sentence each. */
export function CellSays({
  problems,
  nameOf,
}: {
  problems: readonly { row: string; cell: string; says: string }[];
  nameOf: (cell: string) => string;
}) {
  return problems.map(({ row, cell, says }) => (
    <p key={`${row} ${cell} ${says}`} id={`${cellId(row, cell)}:says`} className={css.says}>
      <b>{nameOf(cell)}</b> {says}
    </p>
  ));
}
