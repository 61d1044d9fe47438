import { textOfArmed } from '../../lib/diff/describe.ts';
import type { Expect, ExpectedMode } from '../../lib/procedure/procedure.ts';
import css from './modes.module.css';

const words = (mode: ExpectedMode) => (typeof mode === 'string' ? mode : mode.join(' / '));
const AXES = ['thrust', 'lateral', 'vertical'] as const;

/** The expected mode line. A word that this step changes is marked, and says so to a screen reader. */
export function Modes({ expect, chips = false }: { expect: Expect; chips?: boolean }) {
  const named = AXES.map((axis) => ({ axis, word: words(expect[axis]) })).filter(
    ({ word }) => word !== '' && word !== 'same',
  );
  const armed = expect.armed === null || expect.armed === 'same' ? '' : textOfArmed(expect.armed);
  if (named.length === 0 && !armed) {
    return chips ? null : <span className={`${css.line} ${css.armed}`}>same</span>;
  }
  return (
    <span className={chips ? `${css.line} ${css.chips}` : css.line}>
      {named.map(({ axis, word }) => (
        <span key={axis} className={chips ? undefined : css.changed}>
          <span className="unseen">{axis} </span>
          {word}
        </span>
      ))}
      {armed && <span className={css.armed}>{armed}</span>}
    </span>
  );
}
