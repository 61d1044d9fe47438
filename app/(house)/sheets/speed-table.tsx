import { speedAt } from '../../../lib/aircraft/schedule.ts';
import type { Sheet, SpeedRule } from '../../../lib/aircraft/sheet.ts';
import { formatNumber } from '../../../lib/units/format.ts';
import { Section } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { sayNumber } from './figures.ts';
import css from './sheet.module.css';
import { SourceMark } from './source-mark.tsx';

/** The rules of the speeds, and for each what it gives at the lightest and the heaviest weight. */
export function SpeedTable({ sheet }: { sheet: Sheet }) {
  const { minimumFlight, maximumTakeOff } = sheet.weights;
  const tonnes = (kg: number) => `${formatNumber(kg / 1000, 1)} t`;
  return (
    <Section title="Speeds">
      <p className="small">V1, VR, V2 and VREF serve the checks. A crew takes them from its approved calculation.</p>
      <ScrollBox>
        <table className={css.tight}>
          <thead>
            <tr>
              <th>Speed</th>
              <th>Rule, kt of weight in kg</th>
              <th>At {tonnes(minimumFlight.value)}, kt</th>
              <th>At {tonnes(maximumTakeOff.value)}, kt</th>
              <th>Source</th>
            </tr>
          </thead>
          <tbody>
            {sheet.speeds.map((entry) => (
              <tr key={`${entry.name} ${entry.runway ?? ''} ${entry.detents.join(' ')}`}>
                <td>
                  <b>{entry.name}</b>
                  {entry.runway && ` ${entry.runway}`}
                  <div className="small">{entry.detents.join(', ')}</div>
                </td>
                <td>
                  <Rule entry={entry} />
                </td>
                <td>{ends(sheet, entry, minimumFlight.value)}</td>
                <td>{ends(sheet, entry, maximumTakeOff.value)}</td>
                <td>
                  <SourceMark sheet={sheet} reference={entry.source} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </Section>
  );
}

function Rule({ entry: { rule, icing } }: { entry: SpeedRule }) {
  const said = {
    constant: () => (rule.kind === 'constant' ? `${sayNumber(rule.value)} kt` : ''),
    formula: () => (rule.kind === 'formula' ? rule.text : ''),
    table: () => (rule.kind === 'table' ? `by ${rule.by}: ${pairs(rule.at, rule.gives)}` : ''),
    table2: () =>
      rule.kind === 'table2'
        ? rule.at.map((at, i) => `${rule.by[0]} ${at}: ${pairs(rule.across, rule.gives[i] ?? [])}`).join('; ')
        : '',
  };
  return (
    <>
      <span className={css.formula}>{said[rule.kind]()}</span>
      {icing && <div className="small">in icing {sayNumber(icing.value)} kt more</div>}
    </>
  );
}

const pairs = (at: readonly number[], gives: readonly number[]): string =>
  at.map((point, i) => `${sayNumber(point)} ${sayNumber(gives[i] ?? Number.NaN)}`).join(', ');

function ends(sheet: Sheet, entry: SpeedRule, weight: number): string {
  return entry.detents
    .map((detent) => {
      const ref = { name: entry.name, detent, icing: false, wet: entry.runway === 'wet' };
      const speed = speedAt(sheet, ref, { weight });
      return `${detent} ${speed === null ? 'not given' : formatNumber(speed, 1)}`;
    })
    .join(', ');
}
