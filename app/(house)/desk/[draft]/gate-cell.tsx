'use client';
import { useEffect, useId, useRef, useState } from 'react';
import { setText } from '../../../../lib/document/edit.ts';
import type { Holder } from '../../../../lib/document/model.ts';
import { parseGate } from '../../../../lib/gate/parse.ts';
import { Button } from '../../../_ui/button.tsx';
import { useDraft } from '../_draft/use-draft.ts';
import { TextCell } from './cells.tsx';
import css from './gate-cell.module.css';
import { GateCompletions } from './gate-completions.tsx';

/** A cue in gate notation: completions under the caret, and what can't be read yet with its fix. */
export function GateCell({
  holder,
  field,
  label,
  text,
}: {
  holder: Holder;
  field: string;
  label: string;
  text: string;
}) {
  const { doc, hand } = useDraft();
  const [inside, setInside] = useState(false);
  const frame = useRef<HTMLSpanElement>(null);
  const said = useId();
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const off = new AbortController();
    element.addEventListener('focusin', () => setInside(true), { signal: off.signal });
    element.addEventListener(
      'focusout',
      ({ relatedTarget }) => setInside(element.contains(relatedTarget as Node | null)),
      { signal: off.signal },
    );
    return () => off.abort();
  }, []);
  const { problems } = parseGate(text);
  const shown = text.trim() === '' ? [] : problems.slice(0, 2);
  return (
    <span ref={frame} className={css.frame}>
      <TextCell holder={holder} field={field} label={label} hint="when, e.g. speed >= VMM F12" gate />
      {inside && <GateCompletions holder={holder} field={field} text={text} frame={frame} />}
      <span id={said} aria-live="polite">
        {shown.map((problem) => (
          <span key={problem.message} className={css.problem}>
            {problem.message}
            {problem.fix && (
              <Button
                look="plain"
                onMouseDown={(event) => event.preventDefault()}
                onClick={() => {
                  const { span, text: put } = problem.fix!;
                  setText(doc, hand, holder, field, span.from, span.to - span.from, put);
                }}
              >
                {problem.fix.says}
              </Button>
            )}
          </span>
        ))}
      </span>
    </span>
  );
}
