'use client';
import { useEffect, useState } from 'react';
import type { Sheet } from '../../../../lib/aircraft/sheet.ts';
import { MASS, SPEED } from '../../../../lib/units/measure.ts';
import { QuantityInput } from '../../../_ui/quantity-input.tsx';
import css from '../../read.module.css';
import { type Figure, NO_FIGURES, type Today } from './bands.ts';

/** The numbers for today: typed by the pilot from the approved calculation, kept on this page alone. */
export function TodayForm({
  sheet,
  figures,
  onToday,
}: {
  sheet: Sheet | null;
  figures: readonly Figure[];
  onToday: (today: Today) => void;
}) {
  const [today, setToday] = useState(NO_FIGURES);
  useEffect(() => onToday(today), [today, onToday]);
  if (!sheet) return <p className="small">No type data sheet belongs to this issue, so no band can be shown.</p>;
  const { minimumFlight, maximumTakeOff } = sheet.weights;
  const figure = (name: Figure) => (value: number | null) =>
    setToday((before) => ({ ...before, figures: { ...before.figures, [name]: value ?? undefined } }));
  return (
    <section className={`${css.today} no-print`} aria-label="Numbers for today">
      <QuantityInput
        label="Weight today, t"
        measure={MASS}
        field={{ unit: 't', least: minimumFlight.value, most: maximumTakeOff.value }}
        onValue={(weight) => setToday((before) => ({ ...before, weight }))}
      />
      {figures.map((name) => (
        <QuantityInput
          key={name}
          label={`${name}, approved, kt`}
          measure={SPEED}
          field={{ unit: 'kt', least: 60, most: 250 }}
          onValue={figure(name)}
        />
      ))}
    </section>
  );
}
