'use client';
import { type RefObject, useEffect, useRef, useState } from 'react';

/** How wide a box is, px, so that charts are drawn at their real size and text stays readable on a phone. */
export function useWidth<T extends HTMLElement>(first: number): readonly [RefObject<T | null>, number] {
  const box = useRef<T>(null);
  const [width, setWidth] = useState(first);
  useEffect(() => {
    if (!box.current) return;
    const watch = new ResizeObserver(([entry]) => {
      const next = Math.floor(entry?.contentRect.width ?? first);
      if (next > 0) setWidth(next);
    });
    watch.observe(box.current);
    return () => watch.disconnect();
  }, [first]);
  return [box, width];
}
