import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { formatNumber } from '../../../lib/units/format.ts';
import { Section } from '../../_ui/page-head.tsx';
import css from './band-chart.module.css';
import { BandChart } from './band-chart.tsx';
import { bandRows, type DetentBand, detentBands, marginSentence } from './band-figures.ts';
import { speedScale } from './band-shape.ts';
import { MarginChart } from './margin-chart.tsx';

/** `least`: what the policy wants below the limit of the next detent, kt; null without a policy. */
export function BandCharts({ sheet, least }: { sheet: Sheet; least: number | null }) {
  const bands = detentBands(sheet);
  const speeds = speedScale(bands);
  return (
    <Section title="Bands by weight">
      <p className="small">
        From VMM up to the limit of the detent. The stronger part, up to the dashed line, lies below the limit of the
        next detent: there the next flap may be selected.
      </p>
      <div className={css.charts}>
        {bands.map((band) => (
          <figure key={band.detent}>
            <BandChart band={band} speeds={speeds} />
            <figcaption>
              <b>{band.detent}</b>
              {least !== null && band.next && <span>{marginSentence(sheet, band, least)}.</span>}
              <Rows sheet={sheet} band={band} />
            </figcaption>
          </figure>
        ))}
        {least !== null && (
          <figure>
            <MarginChart bands={bands} least={least} />
            <figcaption>
              <b>What is left for the next flap</b>
              <span>VFE of the next detent less VMM of the present one.</span>
            </figcaption>
          </figure>
        )}
      </div>
    </Section>
  );
}

function Rows({ sheet, band }: { sheet: Sheet; band: DetentBand }) {
  const knots = (value: number | null) => (value === null ? '–' : formatNumber(value, 1));
  return (
    <details>
      <summary>Figures of {band.detent}</summary>
      <table>
        <thead>
          <tr>
            <th>Weight, t</th>
            <th>VMM, kt</th>
            <th>{band.highName}, kt</th>
            {band.next && <th>left below VFE {band.next.detent}, kt</th>}
          </tr>
        </thead>
        <tbody>
          {bandRows(sheet, band).map((row) => (
            <tr key={row.weight}>
              <td>{formatNumber(row.weight / 1000, 1)}</td>
              <td>{knots(row.low)}</td>
              <td>{band.high}</td>
              {band.next && <td>{knots(row.margin)}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
