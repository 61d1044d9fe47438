'use client';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import css from './shell.module.css';

/** What may be wider than a phone scrolls inside its own box; while it does, the keys can reach it. */
export function ScrollBox({ children }: { children: ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  const [wide, setWide] = useState(false);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const look = () => setWide(element.scrollWidth > element.clientWidth + 1);
    const watch = new ResizeObserver(look);
    watch.observe(element);
    look();
    return () => watch.disconnect();
  }, []);
  return (
    <div
      ref={box}
      className={css.scroll}
      {...(wide ? { tabIndex: 0, role: 'group', 'aria-label': 'Table, scrolls sideways' } : {})}
    >
      {children}
    </div>
  );
}
