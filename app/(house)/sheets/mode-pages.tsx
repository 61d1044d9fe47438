import Link from 'next/link';
import type { ModeSet } from '../../../lib/aircraft/mode-set.ts';
import { EventTable } from './event-table.tsx';
import { AXES, type Axis, armingOf, movesOf } from './mode-grid.ts';
import { ArmingTable, ModeMatrix } from './mode-matrix.tsx';
import { ModeWords } from './mode-words.tsx';
import css from './modes.module.css';

const VIEWS = ['all', ...AXES, 'armed'] as const;

/** The whole table, or one axis at a time. */
export function ModePages({ modes, view: asked }: { modes: ModeSet; view: string | undefined }) {
  const view = VIEWS.find((one) => one === asked) ?? 'all';
  return (
    <>
      <nav className={css.axes} aria-label="Axis">
        {VIEWS.map((one) => (
          <Link key={one} href={one === 'all' ? '?' : `?axis=${one}`} aria-current={one === view ? 'page' : undefined}>
            {one}
          </Link>
        ))}
      </nav>
      {view === 'armed' && <ArmingTable modes={modes} />}
      {isAxis(view) && <ModeMatrix modes={modes} axis={view} />}
      <EventTable modes={modes} only={eventsOf(modes, view)} />
      {view === 'all' && <ModeWords modes={modes} />}
    </>
  );
}

const isAxis = (view: string): view is Axis => AXES.some((axis) => axis === view);

function eventsOf(modes: ModeSet, view: (typeof VIEWS)[number]): readonly string[] | null {
  if (view === 'all') return null;
  if (isAxis(view)) return movesOf(modes, view).map((move) => move.event);
  return armingOf(modes).flatMap((line) => [...line.arms, ...line.disarms, ...line.anew]);
}
