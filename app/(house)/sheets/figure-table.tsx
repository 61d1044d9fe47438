import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { Section } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { figuresUnder } from './figures.ts';
import css from './sheet.module.css';
import { SourceMark } from './source-mark.tsx';

/** One part of the sheet: what, how much, from where. */
export function FigureTable({
  sheet,
  part,
  title,
}: {
  sheet: Sheet;
  part: 'weights' | 'limits' | 'drag' | 'thrust' | 'fuel' | 'constants' | 'guidance';
  title: string;
}) {
  const figures = figuresUnder(sheet[part], part);
  if (figures.length === 0) return null;
  return (
    <Section title={title}>
      <ScrollBox>
        <table className={css.tight}>
          <thead>
            <tr>
              <th>What</th>
              <th>Figure</th>
              <th>Source</th>
            </tr>
          </thead>
          <tbody>
            {figures.map((figure) => (
              <tr key={figure.path}>
                <td>
                  {figure.label}
                  {figure.note && <div className="small">{figure.note}</div>}
                </td>
                <td className={css.figure}>{figure.says}</td>
                <td>
                  <SourceMark sheet={sheet} reference={figure.source} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </Section>
  );
}
