'use client';
import { type RefObject, useEffect, useId, useMemo, useState } from 'react';
import { setText } from '../../../../lib/document/edit.ts';
import type { Holder } from '../../../../lib/document/model.ts';
import { completeGate } from '../../../../lib/gate/complete.ts';
import { useDraft } from '../_draft/use-draft.ts';
import { useEditing } from './editing.ts';
import css from './gate-cell.module.css';

const MOST = 12;

/** What may come next at the caret. Arrow down and up choose, Enter or Tab takes, Escape closes. */
export function GateCompletions(props: {
  holder: Holder;
  field: string;
  text: string;
  frame: RefObject<HTMLElement | null>;
}) {
  const { holder, field, text, frame } = props;
  const { doc, hand } = useDraft();
  const { sheet } = useEditing();
  const [caret, setCaret] = useState<number | null>(null);
  const [active, setActive] = useState(-1);
  const [closed, setClosed] = useState(false);
  const id = useId();
  const names = useMemo(
    () =>
      sheet
        ? {
            detents: sheet.detents.map((detent) => detent.name),
            thrust: sheet.modes.thrust,
            lateral: sheet.modes.lateral,
            vertical: sheet.modes.vertical,
            armed: [...sheet.modes.armedVertical, ...sheet.modes.armedLateral],
          }
        : {},
    [sheet],
  );
  useEffect(() => {
    const look = () => {
      const selection = document.getSelection();
      const inside =
        selection?.focusNode && frame.current?.querySelector('[contenteditable]')?.contains(selection.focusNode);
      setCaret(inside ? selection.focusOffset : null);
    };
    look();
    document.addEventListener('selectionchange', look);
    return () => document.removeEventListener('selectionchange', look);
  }, [frame]);
  const found = useMemo(() => (caret === null ? null : completeGate(text, caret, names)), [text, caret, names]);
  const options = found && !closed ? found.options.slice(0, MOST) : [];
  useEffect(() => {
    setActive(-1);
    setClosed(false);
  }, [text]);
  const take = (at: number) => {
    if (!found || !options[at]) return;
    const { text: put } = options[at];
    setText(doc, hand, holder, field, found.from, found.to - found.from, put);
    const cell = frame.current?.querySelector('[contenteditable]');
    if (cell?.firstChild)
      document
        .getSelection()
        ?.collapse(cell.firstChild, Math.min(found.from + put.length, cell.textContent?.length ?? 0));
  };
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const key = (event: KeyboardEvent) => {
      if (options.length === 0 || event.altKey || event.ctrlKey || event.metaKey) return;
      if (event.key === 'ArrowDown') setActive((before) => (before + 1) % options.length);
      else if (event.key === 'ArrowUp') setActive((before) => (before <= 0 ? options.length : before) - 1);
      else if (active >= 0 && (event.key === 'Enter' || event.key === 'Tab')) take(active);
      else if (active >= 0 && event.key === 'Escape') setClosed(true);
      else return;
      event.preventDefault();
      event.stopPropagation();
    };
    element.addEventListener('keydown', key, { capture: true });
    return () => element.removeEventListener('keydown', key, { capture: true });
  });
  if (options.length === 0) return null;
  return (
    <div className={css.list} role="listbox" aria-label="What may come next" id={id}>
      {options.map((option, at) => (
        <button
          key={option.text}
          type="button"
          role="option"
          aria-selected={at === active}
          tabIndex={-1}
          className={at === active ? css.active : undefined}
          onMouseDown={(event) => event.preventDefault()}
          onClick={() => take(at)}
        >
          {option.text}
        </button>
      ))}
    </div>
  );
}
