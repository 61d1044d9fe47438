'use client';
// One moment for the whole page. It lives outside of what is drawn from the flight, so that moving it redraws a line and a
// sentence, and no chart.
import { createContext, type PointerEvent, type ReactNode, useContext, useMemo, useSyncExternalStore } from 'react';
import css from './charts.module.css';
import type { Axis } from './time-axis.ts';

export type Cursor = {
  readonly get: () => number;
  readonly set: (time: number) => void;
  readonly subscribe: (hear: () => void) => () => void;
};

export function makeCursor(): Cursor {
  let time = 0;
  const hears = new Set<() => void>();
  return {
    get: () => time,
    set(next) {
      if (next === time) return;
      time = next;
      for (const hear of hears) hear();
    },
    subscribe(hear) {
      hears.add(hear);
      return () => hears.delete(hear);
    },
  };
}

const CursorContext = createContext<Cursor | null>(null);

export function CursorProvider({ children }: { children: ReactNode }) {
  const cursor = useMemo(makeCursor, []);
  return <CursorContext value={cursor}>{children}</CursorContext>;
}

export function useCursor(): Cursor {
  const cursor = useContext(CursorContext);
  if (!cursor) throw new Error('no cursor here');
  return cursor;
}

export function useCursorTime(): number {
  const cursor = useCursor();
  return useSyncExternalStore(cursor.subscribe, cursor.get, () => 0);
}

/** The line through one chart. */
export function CursorLine({ x, height }: { x: Axis; height: number }) {
  const at = x.place(useCursorTime());
  return <line className={css.cursor} x1={at} x2={at} y1={0} y2={height} />;
}

/** Press or draw along a chart to move the cursor; up and down still scrolls the page. `moment`: of a place in px. */
export function useDrag(moment: (place: number) => number) {
  const cursor = useCursor();
  const move = (event: PointerEvent<SVGSVGElement>): void => {
    const box = event.currentTarget.getBoundingClientRect();
    const drawn = event.currentTarget.viewBox.baseVal.width;
    cursor.set(moment(((event.clientX - box.left) / box.width) * drawn));
  };
  return {
    onPointerDown(event: PointerEvent<SVGSVGElement>) {
      event.currentTarget.setPointerCapture(event.pointerId);
      move(event);
    },
    onPointerMove(event: PointerEvent<SVGSVGElement>) {
      if (event.buttons > 0 || event.pointerType === 'touch') move(event);
    },
  };
}
