'use client';
import { textOfExpect } from '../../../../lib/diff/describe.ts';
import { findStep, positionWords } from '../../../../lib/procedure/locate.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import { Button } from '../../../_ui/button.tsx';
import { fillExpect } from '../_draft/fill-expect.ts';
import type { ModeAnswer } from '../_draft/mode-answer.ts';
import { useDraft } from '../_draft/use-draft.ts';
import { useEditing } from './editing.ts';
import css from './mode-panel.module.css';

/** Writes what the explorer found as the expected modes of the step; where that is not one answer, says why. */
export function FillModes(props: { procedure: Procedure; answer: ModeAnswer; pending: boolean }) {
  const { procedure, answer, pending } = props;
  const { doc, hand } = useDraft();
  const { may, refuse } = useEditing();
  const { fill, step } = answer;
  if (!may.write) return null;
  const press = () => {
    if ('because' in fill) return;
    // Not disabled meanwhile: the key would lose its focus at every letter that somebody types.
    if (pending)
      return refuse('The text has moved on and the modes are worked out again. Nothing was filled; press again.');
    const name = positionWords(procedure, step);
    const said = textOfExpect(fill.expect);
    const stood = findStep(procedure, step)?.expect;
    const before = stood ? textOfExpect(stood) : '–';
    if (before === said) return refuse(`${name} expects these modes already: ${said}. Nothing was changed.`);
    fillExpect(doc, hand, step, fill.expect);
    refuse(`${name} now expects: ${said} (before: ${before}). Undo takes it back.`);
  };
  return (
    <div className={css.fill}>
      <Button onClick={press} disabled={'because' in fill} aria-describedby="fill-modes-says">
        Fill the expected modes
      </Button>
      <span id="fill-modes-says" className="small">
        {'because' in fill ? `Not one answer: ${fill.because}.` : `Would write: ${textOfExpect(fill.expect)}`}
      </span>
    </div>
  );
}
