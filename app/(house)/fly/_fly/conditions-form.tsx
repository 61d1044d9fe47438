'use client';
import { useId, useState } from 'react';
import type { Sheet } from '../../../../lib/aircraft/sheet.ts';
import type { Conditions } from '../../../../lib/flight/trace.ts';
import type { Range } from '../../../../lib/procedure/procedure.ts';
import { formatNumber } from '../../../../lib/units/format.ts';
import css from './fly.module.css';
import type { Given } from './fly-one.ts';

type Props = {
  given: Given;
  /** As flown last; null before the first flight. */
  shown: Conditions | null;
  sheet: Sheet;
  weights: Range;
  onGiven: (given: Given) => void;
};

/** The weight as a slider, the rest as figures. Every change is flown at once. */
export function ConditionsForm({ given, shown, sheet, weights, onGiven }: Props) {
  const set = (more: Partial<Given>): void => onGiven({ ...given, ...more });
  const tonnes = (kg: number): string => formatNumber(kg / 1000, 1);
  const from = Math.min(weights.from, sheet.weights.minimumFlight.value);
  return (
    <section className={`${css.conditions} no-print`} aria-label="Conditions">
      <label className={css.weight}>
        <span>
          Weight <b>{tonnes(given.weight)} t</b>
        </span>
        <span className={css.track}>
          <span className="small">{tonnes(from)}</span>
          <input
            type="range"
            min={from}
            max={sheet.weights.maximumTakeOff.value}
            step={100}
            value={given.weight}
            aria-label="Weight"
            aria-valuetext={`${tonnes(given.weight)} t`}
            onChange={(event) => set({ weight: Number(event.target.value) })}
          />
          <span className="small">{tonnes(sheet.weights.maximumTakeOff.value)} t</span>
        </span>
      </label>
      <Figure
        label="Weight, t"
        value={given.weight / 1000}
        onValue={(weight) => set({ weight: Math.round(weight * 1000) })}
      />
      <Figure
        label="Head wind, kt"
        hint="tail wind below nought"
        value={given.wind ?? shown?.wind}
        onValue={(wind) => set({ wind })}
      />
      <Figure
        label="°C from standard"
        value={given.temperature ?? shown?.temperature}
        onValue={(temperature) => set({ temperature })}
      />
      <Figure
        label="Elevation, ft"
        value={given.elevation ?? shown?.elevation}
        onValue={(elevation) => set({ elevation })}
      />
      <Figure
        label="Selected altitude, ft"
        value={given.selectedAltitude ?? shown?.selectedAltitude}
        onValue={(selectedAltitude) => set({ selectedAltitude, missedApproachAltitude: selectedAltitude })}
      />
      <Pick
        label="Detent"
        value={given.detent ?? shown?.detent}
        of={sheet.detents.filter((one) => one.use.length > 0).map((one) => one.name)}
        onValue={(detent) => set({ detent })}
      />
      <Pick
        label="Standard"
        value={given.standard ?? shown?.standard}
        of={Object.keys(sheet.modes.standards)}
        onValue={(standard) => set({ standard })}
      />
    </section>
  );
}

/** What is typed stays as typed; what is no number is said, and the flight stays that of before. */
function Figure(props: { label: string; hint?: string; value: number | undefined; onValue: (value: number) => void }) {
  const said = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const text = typed ?? (props.value === undefined ? '' : String(Math.round(props.value * 10) / 10));
  const wrong = typed !== null && read(typed) === null;
  return (
    <label className={css.figureField}>
      <span>{props.label}</span>
      <input
        value={text}
        inputMode="decimal"
        autoComplete="off"
        aria-invalid={wrong}
        aria-describedby={said}
        onChange={(event) => {
          setTyped(event.target.value);
          const value = read(event.target.value);
          if (value !== null) props.onValue(value);
        }}
        onBlur={() => {
          if (!wrong) setTyped(null);
        }}
      />
      <span id={said} className="small">
        {wrong ? 'no number; flown as before' : (props.hint ?? '')}
      </span>
    </label>
  );
}

const read = (typed: string): number | null => {
  const plain = typed.replaceAll(/[\s\u00a0\u202f]/g, '').replace('−', '-');
  return /^[+-]?\d+(\.\d+)?$/.test(plain) ? Number(plain) : null;
};

function Pick(props: {
  label: string;
  value: string | undefined;
  of: readonly string[];
  onValue: (value: string) => void;
}) {
  return (
    <label className={css.figureField}>
      <span>{props.label}</span>
      <select value={props.value ?? ''} onChange={(event) => props.onValue(event.target.value)}>
        {props.value === undefined && <option value="" />}
        {props.of.map((one) => (
          <option key={one}>{one}</option>
        ))}
      </select>
    </label>
  );
}
