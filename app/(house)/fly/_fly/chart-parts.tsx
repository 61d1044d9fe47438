'use client';
import { type ReactNode, useState } from 'react';
import { ScrollBox } from '../../../_ui/scroll-box.tsx';
import css from './charts.module.css';
import { type Axis, LEFT, RIGHT } from './time-axis.ts';

/** One chart with its name, what its lines mean, and the table behind it, which is made when it is opened. */
export function Chart(props: { title: string; says: ReactNode; table: () => ReactNode; children: ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <figure className={css.figure} aria-label={props.title}>
      <h3>{props.title}</h3>
      {props.children}
      <figcaption>{props.says}</figcaption>
      <details onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{props.title} as a table</summary>
        {open && <ScrollBox>{props.table()}</ScrollBox>}
      </details>
    </figure>
  );
}

/** What is drawn inside the axes; what lies beyond them is cut off. */
export function Plot({ width, height, children }: { width: number; height: number; children: ReactNode }) {
  const inner = Math.max(1, width - LEFT - RIGHT + 2);
  return (
    <svg
      x={LEFT - 1}
      y={0}
      width={inner}
      height={height}
      viewBox={`${LEFT - 1} 0 ${inner} ${height}`}
      aria-hidden="true"
    >
      {children}
    </svg>
  );
}

/** Lines across with their figures at the left, and marks of the other axis at the bottom. */
export function Grid(props: { x: Axis; y: Axis; width: number; bottom: number; across: string; up: string }) {
  const { x, y, width, bottom } = props;
  return (
    <g>
      {y.ticks.map((tick) => (
        <g key={tick.says}>
          <line x1={LEFT} x2={width - RIGHT} y1={tick.at} y2={tick.at} className={css.grid} />
          <text x={LEFT - 6} y={tick.at + 4} className={`${css.tick} ${css.end}`}>
            {tick.says}
          </text>
        </g>
      ))}
      <line x1={LEFT} x2={width - RIGHT} y1={bottom} y2={bottom} className={css.axis} />
      <Marks x={x} bottom={bottom} />
      <text x={width - RIGHT} y={bottom + 28} className={`${css.tick} ${css.end}`}>
        {props.across}
      </text>
      <text x={2} y={10} className={css.tick}>
        {props.up}
      </text>
    </g>
  );
}

export function Marks({ x, bottom }: { x: Axis; bottom: number }) {
  return (
    <>
      {x.ticks.map((tick) => (
        <g key={tick.says}>
          <line x1={tick.at} x2={tick.at} y1={bottom} y2={bottom + 4} className={css.axis} />
          <text x={tick.at} y={bottom + 16} className={`${css.tick} ${css.middle}`}>
            {tick.says}
          </text>
        </g>
      ))}
    </>
  );
}

/** What a line means, with a piece of it. */
export function Key({ lines }: { lines: readonly (readonly [className: string | undefined, words: string] | null)[] }) {
  return (
    <ul className={css.key}>
      {lines.map((one) =>
        one === null ? null : (
          <li key={one[1]}>
            <svg width="26" height="10" aria-hidden="true">
              {one[0] === css.band ? (
                <rect width="26" height="10" className={one[0]} />
              ) : (
                <line x1="0" x2="26" y1="5" y2="5" className={one[0]} />
              )}
            </svg>
            {one[1]}
          </li>
        ),
      )}
    </ul>
  );
}

export function Rows({ heads, rows }: { heads: readonly string[]; rows: readonly (readonly ReactNode[])[] }) {
  return (
    <table>
      <thead>
        <tr>
          {heads.map((head) => (
            <th key={head}>{head}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, place) => (
          <tr key={place}>
            {row.map((cell, column) => (
              <td key={heads[column]}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
