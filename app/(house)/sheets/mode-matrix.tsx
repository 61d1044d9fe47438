import type { ModeSet } from '../../../lib/aircraft/mode-set.ts';
import { Section } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { type Axis, armingOf, movesOf } from './mode-grid.ts';
import css from './modes.module.css';

const links = (ids: readonly string[]) =>
  ids.length === 0
    ? '–'
    : ids.map((id, at) => (
        <span key={id}>
          {at > 0 && ' '}
          <a href={`#${id}`}>{id}</a>
        </span>
      ));

/** From the word on the left to the word above: the events that do it. */
export function ModeMatrix({ modes, axis }: { modes: ModeSet; axis: Axis }) {
  const words = modes[axis];
  const moves = movesOf(modes, axis);
  const between = (from: string, to: string) =>
    moves.filter((move) => move.from === from && move.to === to).map((move) => move.event);
  return (
    <Section title={`${axis[0]!.toUpperCase()}${axis.slice(1)}: from the left to the top`}>
      <ScrollBox>
        <table className={css.matrix}>
          <thead>
            <tr>
              <th scope="col">from</th>
              {words.map((word) => (
                <th key={word} scope="col">
                  {word}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {words.map((from) => (
              <tr key={from}>
                <th scope="row">{from}</th>
                {words.map((to) => (
                  <td key={to} className={from === to ? css.same : undefined}>
                    {from === to ? '' : links(between(from, to))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </Section>
  );
}

export function ArmingTable({ modes }: { modes: ModeSet }) {
  return (
    <Section title="Armed words">
      <ScrollBox>
        <table>
          <thead>
            <tr>
              <th>Word</th>
              <th>Armed by</th>
              <th>Disarmed by</th>
              <th>Decided anew by where the selected altitude lies</th>
            </tr>
          </thead>
          <tbody>
            {armingOf(modes).map((line) => (
              <tr key={line.word}>
                <th scope="row">{line.word}</th>
                <td>{links(line.arms)}</td>
                <td>{links(line.disarms)}</td>
                <td>{links(line.anew)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </Section>
  );
}
