import css from './charts.module.css';
import { fitted, type ModeSegment, type Who } from './lanes-shape.ts';
import { type Axis, LEFT } from './time-axis.ts';

/** A word from each change on. A hand's change is a full square on an unbroken line, the guidance's an open one on a broken line. */
export function ModeLane({
  x,
  now,
  was,
}: {
  x: Axis;
  now: readonly ModeSegment[];
  was: readonly ModeSegment[] | null;
}) {
  return (
    <>
      {now.map((segment) => {
        const [from, to] = [x.place(segment.from), x.place(segment.to)];
        const left = Math.max(from, LEFT);
        const said = fitted(segment.word, to - left - 6);
        return (
          <g key={segment.from}>
            {segment.by !== null && <Change at={from} by={segment.by} />}
            {said !== '' && (
              <text x={left + 8} y={21} className={css.word}>
                {said}
              </text>
            )}
          </g>
        );
      })}
      {was?.map((segment) => {
        const [from, to] = [x.place(segment.from), x.place(segment.to)];
        const left = Math.max(from, LEFT);
        return (
          <g key={segment.from}>
            {segment.by !== null && <line x1={from} x2={from} y1={32} y2={44} className={css.axis} />}
            <text x={left + 8} y={42} className={css.wasWord}>
              {fitted(segment.word, to - left - 6)}
            </text>
          </g>
        );
      })}
    </>
  );
}

function Change({ at, by }: { at: number; by: Who }) {
  return (
    <g>
      <line x1={at} x2={at} y1={4} y2={28} className={css[`${by}Line`]} />
      <ChangeMark at={at} y={6} by={by} />
    </g>
  );
}

/** Square for a hand, diamond for the guidance, triangle for what comes from outside. */
export function ChangeMark({ at, y, by }: { at: number; y: number; by: Who }) {
  if (by === 'crew') return <rect x={at - 3.5} y={y - 3.5} width={7} height={7} className={css.crew} />;
  if (by === 'automatic') {
    return <path d={`M${at} ${y - 5}L${at + 5} ${y}L${at} ${y + 5}L${at - 5} ${y}Z`} className={css.automatic} />;
  }
  return <path d={`M${at} ${y - 5}L${at + 5} ${y + 4}L${at - 5} ${y + 4}Z`} className={css.environment} />;
}
