'use client';
import { useEffect, useState } from 'react';

/**
 * How wide a box is, px, so that charts are drawn at their real size and text stays readable on a phone. The box is given
 * when it comes: before the first flight there is none.
 */
export function useWidth<T extends HTMLElement>(first: number): readonly [(box: T | null) => void, number] {
  const [box, setBox] = useState<T | null>(null);
  const [width, setWidth] = useState(first);
  useEffect(() => {
    if (!box) return;
    const watch = new ResizeObserver(([entry]) => {
      const next = Math.floor(entry?.contentRect.width ?? 0);
      if (next > 0) setWidth(next);
    });
    watch.observe(box);
    return () => watch.disconnect();
  }, [box]);
  return [setBox, width];
}
