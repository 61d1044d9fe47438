'use client';
import css from './fly.module.css';
import { type Amounts, FIELDS } from './plan-ways.ts';

type Props = {
  way: 'around' | 'direct';
  amounts: Amounts;
  side: 'left' | 'right';
  onSide: (side: 'left' | 'right') => void;
  onAmounts: (amounts: Amounts) => void;
};

export function PlanFields({ way, amounts, side, onSide, onAmounts }: Props) {
  return (
    <div className={`${css.planFields} no-print`}>
      {way === 'around' && (
        <label className={css.figureField}>
          <span>Pass it on the</span>
          <select value={side} onChange={(event) => onSide(event.target.value as 'left' | 'right')}>
            <option>left</option>
            <option>right</option>
          </select>
        </label>
      )}
      {FIELDS[way].map(({ name, label, least, most }) => (
        <label key={name} className={css.figureField}>
          <span>{label}</span>
          <input
            type="number"
            min={least}
            max={most}
            step="any"
            value={Number.isNaN(amounts[name]) ? '' : amounts[name]}
            onChange={(event) => onAmounts({ ...amounts, [name]: event.target.valueAsNumber })}
          />
        </label>
      ))}
    </div>
  );
}
