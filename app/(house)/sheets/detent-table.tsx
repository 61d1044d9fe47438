import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { Section } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { sayNumber } from './figures.ts';
import css from './sheet.module.css';
import { SourceMark } from './source-mark.tsx';

export function DetentTable({ sheet }: { sheet: Sheet }) {
  return (
    <Section title="Detents">
      <ScrollBox>
        <table className={css.tight}>
          <thead>
            <tr>
              <th>Detent</th>
              <th>Slat</th>
              <th>Used for</th>
              <th>VFE</th>
              <th>Greatest lift</th>
              <th>Drag without lift</th>
              <th>Drag by lift</th>
              <th>To the next</th>
            </tr>
          </thead>
          <tbody>
            {sheet.detents.map((detent) => (
              <tr key={detent.name}>
                <td>
                  <b>{detent.name}</b>
                </td>
                <td>{detent.slat}</td>
                <td>{detent.use.join(', ')}</td>
                <Figure sheet={sheet} figure={detent.vfe} unit="kt" none="VMO holds" />
                <Figure sheet={sheet} figure={detent.clMax} unit="" none="–" />
                <Figure sheet={sheet} figure={{ value: detent.drag.cd0, source: detent.drag.source }} unit="" none="" />
                <Figure sheet={sheet} figure={{ value: detent.drag.k, source: detent.drag.source }} unit="" none="" />
                <Figure sheet={sheet} figure={detent.transitToNext} unit="s" none="–" />
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
      {sheet.retractions.map((one) => (
        <p key={`${one.from} ${one.to}`}>
          {one.from} to {one.to} in one movement: {one.phases.join(', ')}.{' '}
          <SourceMark sheet={sheet} reference={one.source} />
        </p>
      ))}
    </Section>
  );
}

function Figure(props: {
  sheet: Sheet;
  figure: { readonly value: number; readonly source: string } | null;
  unit: string;
  none: string;
}) {
  const { sheet, figure, unit, none } = props;
  if (!figure) return <td>{none}</td>;
  return (
    <td>
      <span className={css.figure}>
        {sayNumber(figure.value)}
        {unit && ` ${unit}`}
      </span>
      <br />
      <SourceMark sheet={sheet} reference={figure.source} />
    </td>
  );
}
