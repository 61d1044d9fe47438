import type { ModeSet } from '../../../lib/aircraft/mode-set.ts';
import { Section } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import css from './sheet.module.css';

/** The words of the mode set, how each is spoken, what speed the vertical ones fly, and what tells the standards apart. */
export function ModeWords({ modes }: { modes: ModeSet }) {
  const groups: readonly (readonly [string, readonly string[]])[] = [
    ['thrust', modes.thrust],
    ['lateral', modes.lateral],
    ['vertical', modes.vertical],
    ['armed', [...modes.armedVertical, ...modes.armedLateral.filter((word) => !modes.armedVertical.includes(word))]],
  ];
  return (
    <>
      <Section title="Words">
        <ScrollBox>
          <table className={css.tight}>
            <thead>
              <tr>
                <th>Axis</th>
                <th>Word</th>
                <th>Spoken</th>
                <th>Speed it flies</th>
              </tr>
            </thead>
            <tbody>
              {groups.flatMap(([axis, words]) =>
                words.map((word) => (
                  <tr key={`${axis} ${word}`}>
                    <td>{axis}</td>
                    <td className="gate">{word}</td>
                    <td>{modes.spoken[word] ? `“${modes.spoken[word]}”` : '–'}</td>
                    <td>{axis === 'vertical' ? (modes.targets[word] ?? '–') : ''}</td>
                  </tr>
                )),
              )}
            </tbody>
          </table>
        </ScrollBox>
      </Section>
      <Section title="Standards">
        <ul className={css.says}>
          {Object.entries(modes.standards).map(([name, says]) => (
            <li key={name}>
              {name}: {says}
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}
