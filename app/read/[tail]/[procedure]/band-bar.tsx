import { across, type Scale } from '../../../_ui/rail-shape.ts';
import css from '../../read.module.css';
import type { StepBand } from './bands.ts';

/** The floor rounded up and the limit rounded down, so that rounding never widens a band. */
const floor = (knots: number) => `${Math.ceil(knots)} kt`;
const limit = (knots: number) => `${Math.floor(knots)} kt`;

/** The band of a step: light over all weights, dark for the weight typed, the figures with the names of what they are. */
export function BandBar({ band: { all, band, figure }, scale }: { band: StepBand; scale: Scale }) {
  if (!band && !figure) return null;
  const low = band?.low ?? null;
  return (
    <div className={css.band}>
      {all && band && (
        <svg className={css.bar} viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
          <rect
            className={css.all}
            x={across(scale, all.low)}
            width={across(scale, all.high) - across(scale, all.low)}
            height="10"
          />
          {low !== null && (
            <rect
              className={css.one}
              x={across(scale, low)}
              width={Math.max(0, across(scale, band.high) - across(scale, low))}
              height="10"
            />
          )}
          {figure?.knots && <rect className={css.aim} x={across(scale, figure.knots)} width="0.8" height="10" />}
        </svg>
      )}
      <div className={css.row}>
        {band && (
          <span>
            {band.lowName}: {low === null ? 'enter the approved figure' : <b>{floor(low)}</b>}
          </span>
        )}
        {figure && (
          <span>
            {figure.name}: {figure.knots === null ? 'enter it' : <b>{Math.round(figure.knots)} kt</b>}
          </span>
        )}
        {band && (
          <span>
            {band.highName}: <b>{limit(band.high)}</b>
          </span>
        )}
      </div>
    </div>
  );
}
