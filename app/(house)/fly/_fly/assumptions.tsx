import { FLIGHT_VERSION, type Trace } from '../../../../lib/flight/trace.ts';
import type { OpenFlight } from '../../../../lib/server/flights.ts';
import { formatDeviation, formatHeight, formatNumber, formatTonnes, typeset } from '../../../../lib/units/format.ts';
import type { Deviation, Feet, Kilograms } from '../../../../lib/units/quantity.ts';
import css from './fly.module.css';

/** Before any chart: under which conditions it was flown, what was taken for granted, and what the model can't say. */
export function Assumptions({ open, trace }: { open: OpenFlight; trace: Trace }) {
  const { conditions } = trace;
  const { weight, elevation, temperature, wind, windGradient, enginesOut, standard, detent, selectedAltitude } =
    conditions;
  const blows = wind === 0 ? 'calm' : `${formatNumber(Math.abs(wind))} kt ${wind > 0 ? 'head' : 'tail'} wind`;
  const more = windGradient === 0 ? '' : `, ${formatNumber(windGradient, 1)} kt more for each 1 000 ft`;
  const facts: readonly (readonly [string, string])[] = [
    ['Weight', formatTonnes(weight as Kilograms)],
    ['Elevation', formatHeight(elevation as Feet, 'MSL')],
    ['Temperature', formatDeviation(temperature as Deviation)],
    ['Wind', `${blows}${more}`],
    ['Runway state', 'not used: no ground roll is flown'],
    ['Rating', enginesOut === 0 ? 'full, as the sheet' : `full, as the sheet; engines out: ${enginesOut}`],
    ['Planned detent', detent],
    ['Selected altitude', formatHeight(selectedAltitude as Feet, 'MSL')],
    ['Guidance standard', standard],
    ['Sheet, policy', `${open.sheet?.revision ?? 'none'}, version ${open.policyVersion ?? 'none'}`],
    ['Flight model', FLIGHT_VERSION],
  ];
  return (
    <section aria-label="Assumptions" className={css.assumptions}>
      <dl className={css.facts}>
        {facts.map(([name, said]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{typeset(said)}</dd>
          </div>
        ))}
      </dl>
      <div className={css.lists}>
        <div>
          <h2>Taken for granted</h2>
          <ul>
            {trace.assumptions.slice(1).map((line) => (
              <li key={line}>{typeset(line)}</li>
            ))}
          </ul>
        </div>
        <div>
          <h2>What this model cannot say</h2>
          <ul>
            {trace.cannot.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <p className="small">It compares orders and margins. Nothing here is for dispatch.</p>
        </div>
      </div>
    </section>
  );
}
