'use client';
import { memo } from 'react';
import { Button } from '../../../_ui/button.tsx';
import { ScrollBox } from '../../../_ui/scroll-box.tsx';
import css from './score.module.css';
import type { Stroke } from './table-answer.ts';

/** One axis as a score: a column for each word, a line for each rule, from the words that it takes (rings) to where it leads. */
export const AxisScore = memo(function AxisScore(props: {
  axis: string;
  words: readonly string[];
  strokes: readonly Stroke[];
  onRule: (rule: string) => void;
}) {
  const { axis, words, strokes, onRule } = props;
  if (strokes.length === 0) return <p className="small">No rule moves it.</p>;
  return (
    <ScrollBox>
      <table className={css.score}>
        <caption className="unseen">{axis}: which rule leads from which word to which</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Rule</span>
            </th>
            {words.map((word) => (
              <th key={word} scope="col" className={css.word}>
                <span>{word}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {strokes.map((stroke) => (
            <tr key={`${stroke.rule} ${stroke.to}`}>
              <th scope="row">
                <Button look="plain" className={css.rule} onClick={() => onRule(stroke.rule)}>
                  {stroke.rule}
                </Button>
                {stroke.standards.length > 0 && <span className={css.only}> {stroke.standards.join()} only</span>}
              </th>
              {words.map((word, at) => (
                <Beat key={word} stroke={stroke} words={words} at={at} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
});

function Beat({ stroke, words, at }: { stroke: Stroke; words: readonly string[]; at: number }) {
  const to = words.indexOf(stroke.to);
  const from = stroke.from.map((word) => words.indexOf(word));
  const [first, last] = [Math.min(to, ...from), Math.max(to, ...from)];
  const line = [at > first && at <= last ? css.left : '', at >= first && at < last ? css.right : ''];
  const leads = from.some((one) => one < to) ? (from.some((one) => one > to) ? css.both : css.onward) : css.back;
  return (
    <td className={line.filter(Boolean).join(' ') || undefined}>
      {at === to && <span className={`${css.to} ${leads}`}>{<span className="unseen">to</span>}</span>}
      {from.includes(at) && <span className={css.from}>{<span className="unseen">from</span>}</span>}
    </td>
  );
}
