import css from './charts.module.css';
import type { Who } from './lanes-shape.ts';
import { ChangeMark } from './mode-lane.tsx';

const CHANGES: readonly (readonly [Who, string])[] = [
  ['crew', 'changed by a hand'],
  ['automatic', 'changed by the guidance, nobody pressed'],
  ['environment', 'changed from outside'],
];
const BARS: readonly (readonly [string | undefined, string])[] = [
  [css.moving, 'in transit, with its real time'],
  [css.bar, 'busy'],
  [css.collides, '! meets another voice'],
  [css.interrupts, 'interruption'],
];

export function LaneKey({ other }: { other: string }) {
  return (
    <ul className={css.key}>
      {CHANGES.map(([by, says]) => (
        <li key={by}>
          <svg width="12" height="12" aria-hidden="true">
            <ChangeMark at={6} y={6} by={by} />
          </svg>
          {says}
        </li>
      ))}
      {BARS.map(([kind, says]) => (
        <li key={says}>
          <svg width="22" height="12" aria-hidden="true" className={`${css.bar} ${kind ?? ''}`}>
            <rect x="1" y="1" width="20" height="10" rx="2" />
          </svg>
          {says}
        </li>
      ))}
      <li>
        <svg width="26" height="10" aria-hidden="true">
          <line x1="0" x2="26" y1="5" y2="5" className={css.wait} />
        </svg>
        due, waiting for a pilot or for the voice
      </li>
      {other !== '' && <li>second row of each: {other}</li>}
    </ul>
  );
}
