import type { PathMove, Witness } from '../../lib/check/finding.ts';
import { textOfArmed, textOfExpect } from '../../lib/diff/describe.ts';
import type { Expect } from '../../lib/procedure/procedure.ts';
import { typeset } from '../../lib/units/format.ts';
import css from './path.module.css';

type Path = Extract<Witness, { kind: 'path' }>;
const AXES = ['thrust', 'lateral', 'vertical'] as const;

/** How it comes about, move by move, with the mode line after each; at the end what the text tells the crew to expect. */
export function StepThrough({ path, expected }: { path: Path; expected?: Expect | undefined }) {
  const written = expected ? textOfExpect(expected).replace(/^[–/ ]+$/, '') : '';
  return (
    <details className={css.path}>
      <summary>Step through it</summary>
      <p>
        On standard{path.standards.length === 1 ? '' : 's'} {path.standards.join(' and ')}. A marked word has just
        changed.
      </p>
      <ol className={css.moves}>
        {path.steps.map((move, at) => (
          <li key={at}>
            {typeset(move.does)}
            <ModeLine move={move} before={path.steps[at - 1]} />
          </li>
        ))}
      </ol>
      {written && <p>The text expects after this step: {written}</p>}
    </details>
  );
}

/** All three axes and what is armed. A word that this move changes is marked, and says so to a screen reader. */
function ModeLine({ move, before }: { move: PathMove; before: PathMove | undefined }) {
  const armed = textOfArmed(move.armed);
  const rearmed = before !== undefined && textOfArmed(before.armed) !== armed;
  return (
    <span className={css.line}>
      {AXES.map((axis) => {
        const changed = before !== undefined && before[axis] !== move[axis];
        return (
          <span key={axis} className={changed ? css.changed : undefined}>
            <span className="unseen">
              {axis} {changed && 'now '}
            </span>
            {move[axis]}
          </span>
        );
      })}
      <span className={rearmed ? css.changed : css.armed}>
        {rearmed && <span className="unseen">now </span>}
        {armed}
      </span>
    </span>
  );
}
