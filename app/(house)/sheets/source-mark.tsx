import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { sourceOf } from '../../../lib/aircraft/source.ts';
import css from './sheet.module.css';

/** Where a figure comes from, and whether the document was at hand when it was entered. */
export function SourceMark({ sheet, reference }: { sheet: Sheet; reference: string }) {
  const seen = sourceOf(sheet, reference)?.seen ?? false;
  return (
    <span className={css.source}>
      {reference} <span className={seen ? css.seen : css.memory}>{seen ? 'seen' : 'from memory'}</span>
    </span>
  );
}
