import css from './charts.module.css';
import { fitted, type transitLane, type WorkBar } from './lanes-shape.ts';
import { type Axis, LEFT } from './time-axis.ts';

type Moves = ReturnType<typeof transitLane>;

/** Bars of what moves, and between them what is indicated. */
export function MoveLane({ x, now, was }: { x: Axis; now: Moves; was: Moves | null }) {
  return (
    <>
      {now.held.map(({ word, from, to }) => (
        <text key={from} x={Math.max(LEFT, x.place(from)) + 6} y={18} className={css.word}>
          {fitted(word, x.place(to) - Math.max(LEFT, x.place(from)))}
        </text>
      ))}
      {now.bars.map((bar) => (
        <g key={`${bar.from} ${bar.says}`} className={`${css.bar} ${css.moving} ${bar.arrived ? '' : css.never}`}>
          <Box
            x={x}
            from={bar.from}
            to={bar.to}
            y={5}
            height={17}
            says={`${bar.says} ${Math.round(bar.to - bar.from)} s`}
          />
        </g>
      ))}
      {was?.bars.map((bar) => (
        <g key={`${bar.from} ${bar.says}`} className={`${css.bar} ${css.wasBar}`}>
          <Box x={x} from={bar.from} to={bar.to} y={27} height={12} says={bar.says} />
        </g>
      ))}
    </>
  );
}

/** Bars of what somebody does or says, with the wait in front of each. */
export function BarLane({ x, now, was }: { x: Axis; now: readonly WorkBar[]; was: readonly WorkBar[] | null }) {
  return (
    <>
      {now.map((bar) => (
        <g
          key={bar.id}
          className={`${css.bar} ${bar.interrupts ? css.interrupts : ''} ${bar.collides === '' ? '' : css.collides}`}
        >
          {bar.from - bar.due > 0.4 && (
            <line x1={x.place(bar.due)} x2={x.place(bar.from)} y1={24} y2={24} className={css.wait} />
          )}
          <Box
            x={x}
            from={bar.from}
            to={bar.to}
            y={5}
            height={16}
            says={`${bar.collides === '' ? '' : '! '}${bar.says}`}
          />
        </g>
      ))}
      {was?.map((bar) => (
        <g key={bar.id} className={`${css.bar} ${css.wasBar}`}>
          <Box x={x} from={bar.from} to={bar.to} y={27} height={12} says="" />
        </g>
      ))}
    </>
  );
}

function Box(props: { x: Axis; from: number; to: number; y: number; height: number; says: string }) {
  const { x, from, to, y, height, says } = props;
  const [left, right] = [x.place(Math.max(from, x.from)), x.place(Math.min(to, x.to))];
  if (to < x.from || from > x.to) return null;
  const width = Math.max(2, right - left);
  const text = fitted(says, width);
  return (
    <>
      <rect x={left} y={y} width={width} height={height} rx={2} />
      {text !== '' && (
        <text x={left + 3} y={y + height - 4}>
          {text}
        </text>
      )}
    </>
  );
}
