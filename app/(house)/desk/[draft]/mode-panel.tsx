'use client';
import type { ModeSet } from '../../../../lib/aircraft/mode-set.ts';
import type { Possible } from '../../../../lib/mode/expect.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import type { ModesOn } from '../_draft/mode-answer.ts';
import { AXES, standardsWords } from '../_draft/mode-words.ts';
import { FillModes } from './fill-modes.tsx';
import css from './mode-panel.module.css';
import { useModes } from './use-modes.ts';

/** The modes that may be active before and after the step at hand, from every flight as written. */
export function ModePanel({ procedure, modes, step }: { procedure: Procedure; modes: ModeSet; step: string }) {
  const { answer, pending, failed } = useModes(procedure, modes, step);
  if (failed) return <p role="alert">The modes could not be worked out: {failed}.</p>;
  if (answer?.step !== step) return <p className="small">{pending ? 'Working out the modes …' : NOT_THERE}</p>;
  return (
    <section className={css.panel} aria-label="Modes before and after the step" aria-busy={pending}>
      {answer.on.map((one) => (
        <ModesTable key={one.standards.join()} on={one} />
      ))}
      {answer.refused.map(({ standard, because }) => (
        <p key={standard} className="small">
          Standard {standard} is not explored: {because}.
        </p>
      ))}
      <p className="small">
        Explored: {answer.setting}.{pending && ' Of a moment ago; working it out again.'}
      </p>
      <FillModes procedure={procedure} answer={answer} pending={pending} />
    </section>
  );
}

const NOT_THERE = 'This step is not in the text any more.';

function ModesTable({ on }: { on: ModesOn }) {
  const standards = standardsWords(on.standards);
  if (!on.reached) return <p className="small">On {standards}: no flight as written comes to this step.</p>;
  const rows = [...AXES, 'armed'] as const;
  return (
    <table className={css.table}>
      <caption>Modes on {standards}</caption>
      <thead>
        <tr>
          <th>Axis</th>
          <th>before</th>
          <th>after</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => {
          const [before, after] = [wordsOf(on.before, row), wordsOf(on.after, row)];
          return (
            <tr key={row}>
              <th scope="row">{row}</th>
              <td>
                <Words words={before} />
              </td>
              <td className={JSON.stringify(before) === JSON.stringify(after) ? undefined : css.changed}>
                <Words words={after} />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

type Word = { readonly word: string; readonly certain: boolean };

function wordsOf(modes: Possible, row: (typeof AXES)[number] | 'armed'): readonly Word[] {
  if (row !== 'armed') return modes[row].map((word) => ({ word, certain: modes[row].length === 1 }));
  if (modes.armedPossible.length === 0) return [{ word: 'nothing', certain: true }];
  return modes.armedPossible.map((word) => ({ word, certain: modes.armedCertain.includes(word) }));
}

function Words({ words }: { words: readonly Word[] }) {
  return (
    <ul className={css.words}>
      {words.map(({ word, certain }) => (
        <li key={word} className={certain ? undefined : css.possible}>
          {word}
          {!certain && <span className={css.mark}> possible</span>}
        </li>
      ))}
    </ul>
  );
}
