'use client';
import { type RefObject, useEffect } from 'react';
import { insertAfter, remove } from '../../../../lib/document/edit.ts';
import { useDraft } from '../_draft/use-draft.ts';
import { useEditing } from './editing.ts';

/**
 * Keys of the rows, beside those of choosing and moving: arrows go from step to step while no field has the caret, Ctrl+Enter
 * makes a step behind this one, Escape closes the fields, Delete on a step's name removes it.
 */
export function useRowKeys(list: RefObject<HTMLElement | null>): void {
  const { doc, hand } = useDraft();
  const { open, may, refuse } = useEditing();
  useEffect(() => {
    const element = list.current;
    if (!element) return;
    const off = new AbortController();
    element.addEventListener(
      'keydown',
      (event) => {
        const target = event.target as HTMLElement;
        const id = target.closest<HTMLElement>('[data-step]')?.dataset.step;
        if (!id || event.defaultPrevented) return;
        const onName = target.matches('[data-head]');
        if (event.key === 'Enter' && (event.ctrlKey || event.metaKey) && may.write) {
          event.preventDefault();
          open(insertAfter(doc, hand, id), 'cue');
        } else if (event.key === 'Escape') {
          event.preventDefault();
          open(null);
        } else if (onName && may.write && (event.key === 'Delete' || event.key === 'Backspace')) {
          event.preventDefault();
          nextHead(element, target, 1)?.focus();
          remove(doc, hand, 'steps', [id]);
          refuse('1 step removed. Undo brings it back.');
        } else if (
          onName &&
          !event.altKey &&
          !event.shiftKey &&
          (event.key === 'ArrowDown' || event.key === 'ArrowUp')
        ) {
          event.preventDefault();
          nextHead(element, target, event.key === 'ArrowDown' ? 1 : -1)?.focus();
        }
      },
      { signal: off.signal },
    );
    // A click on what is read opens the step with the caret in that field; for keys there is the button with its name.
    element.addEventListener(
      'click',
      (event) => {
        const target = event.target as Element;
        const id = target.closest<HTMLElement>('[data-step]')?.dataset.step;
        const field = target.closest<HTMLElement>('[data-open]')?.dataset.open;
        if (id && field && !event.shiftKey) open(id, field);
      },
      { signal: off.signal },
    );
    return () => off.abort();
  }, [list, doc, hand, open, may.write, refuse]);
}

function nextHead(list: HTMLElement, from: HTMLElement, by: 1 | -1): HTMLElement | undefined {
  const heads = [...list.querySelectorAll<HTMLElement>('[data-head]')];
  return heads[heads.indexOf(from) + by];
}

/** A row that moved took its element along: the caret goes back to where it was. */
export function keepCaret(list: HTMLElement | null, id: string | null): void {
  const field = (document.activeElement as HTMLElement | null)?.dataset.field;
  const selection = document.getSelection();
  const at = selection?.focusOffset ?? 0;
  requestAnimationFrame(() => {
    const row = list?.querySelector(`[data-step="${id}"]`);
    const cell = row?.querySelector<HTMLElement>(field ? `[data-field="${field}"]` : '[data-head]');
    if (!cell || document.activeElement === cell) return;
    cell.focus();
    const text = cell.firstChild;
    if (text && cell.isContentEditable)
      document.getSelection()?.collapse(text, Math.min(at, text.textContent?.length ?? 0));
  });
}
