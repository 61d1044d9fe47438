import type { ReactNode } from 'react';
import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { Section } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { sayNumber } from './figures.ts';
import css from './sheet.module.css';
import { SourceMark } from './source-mark.tsx';

/** What the aircraft shows, says and does by itself, and what can be touched. */
export function MoreTables({ sheet }: { sheet: Sheet }) {
  const { protections, callouts, alerts, runwayStates, options, panel, indications } = sheet;
  return (
    <>
      <Section title="Acts by itself">
        <Rows heads={['What', 'When and how', 'Source']}>
          {protections.map((one) => (
            <tr key={one.name}>
              <td>{one.name}</td>
              <td>
                {one.acts} {one.rule && <span className="small">event {one.rule}</span>}
              </td>
              <Source sheet={sheet} of={one} />
            </tr>
          ))}
        </Rows>
      </Section>
      <Section title="Says and warns">
        <Rows heads={['Words', 'When', 'Source']}>
          {callouts.map((one) => (
            <tr key={one.words}>
              <td>“{one.words}”</td>
              <td>{one.when}</td>
              <Source sheet={sheet} of={one} />
            </tr>
          ))}
          {alerts.map((one) => (
            <tr key={one.name}>
              <td>{one.words ? `“${one.words}”` : one.name}</td>
              <td>
                {one.level}
                {one.words && one.words !== one.name && `: ${one.name}`}
              </td>
              <Source sheet={sheet} of={one} />
            </tr>
          ))}
        </Rows>
      </Section>
      <Section title="Runway states">
        <Rows heads={['Code', 'Surface', 'Crosswind', 'Tail wind', 'Landing distance', 'Autobrake', 'Source']}>
          {runwayStates.map((one) => (
            <tr key={one.code}>
              <td>{one.code}</td>
              <td>{one.surface}</td>
              <td>{one.crosswind} kt</td>
              <td>{one.tailwind} kt</td>
              <td>
                × {sayNumber(one.landingFactor)}, {one.reverseCredit ? 'with' : 'without'} reverse
              </td>
              <td>{one.autobrake}</td>
              <Source sheet={sheet} of={one} />
            </tr>
          ))}
        </Rows>
      </Section>
      <Section title="Options">
        <ul className={css.says}>
          {options.map((one) => (
            <li key={one.id}>
              {one.name}: {one.values.join(', ')} <SourceMark sheet={sheet} reference={one.source} />
            </li>
          ))}
        </ul>
      </Section>
      <Section title="What can be touched">
        <ul className={css.list}>
          {panel.map((one) => (
            <li key={one.name}>
              {one.name} <span className="small">{`${one.kind}, ${one.shared ? 'one for both' : 'one each'}`}</span>
            </li>
          ))}
        </ul>
      </Section>
      <Section title="What can be observed">
        <ul className={css.list}>
          {indications.map((one) => (
            <li key={one.name}>
              {one.name} <span className="small">{one.kind}</span>
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}

function Rows({ heads, children }: { heads: readonly string[]; children: ReactNode }) {
  return (
    <ScrollBox>
      <table className={css.tight}>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head}>{head}</th>
            ))}
          </tr>
        </thead>
        <tbody>{children}</tbody>
      </table>
    </ScrollBox>
  );
}

function Source({ sheet, of }: { sheet: Sheet; of: { readonly source: string } }) {
  return (
    <td>
      <SourceMark sheet={sheet} reference={of.source} />
    </td>
  );
}
