'use client';
import type { Sheet } from '../../../../lib/aircraft/sheet.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import { formatNumber } from '../../../../lib/units/format.ts';
import css from './editor.module.css';

/** The weight at which the dark band is drawn. */
export function WeightSlider(props: {
  procedure: Procedure;
  sheet: Sheet;
  weight: number | null;
  onWeight: (weight: number) => void;
}) {
  const { procedure, sheet, weight, onWeight } = props;
  const span = procedure.envelope.weight ?? {
    from: sheet.weights.minimumFlight.value,
    to: sheet.weights.maximumTakeOff.value,
  };
  const value = weight ?? (span.from + span.to) / 2;
  const tonnes = (kg: number) => formatNumber(kg / 1000, 1);
  return (
    <label className={css.weight}>
      <span>
        Band at <b>{tonnes(value)} t</b>
      </span>
      <span className={css.track}>
        <span className="small">{tonnes(span.from)}</span>
        <input
          type="range"
          min={span.from}
          max={span.to}
          step={100}
          value={value}
          aria-label="Weight"
          aria-valuetext={`${tonnes(value)} t`}
          onChange={(event) => onWeight(Number(event.target.value))}
        />
        <span className="small">{tonnes(span.to)} t</span>
      </span>
    </label>
  );
}
