'use client';
import { useEffect, useState } from 'react';
import { sayTime } from '../_ui/when.tsx';
import css from './read.module.css';

/** After this long without the server the copy may be out of date. One rotation of a short-haul day. */
const FRESH_FOR = 12 * 3_600_000;

/** Says across the page when this device shows a saved copy, and from when it is. */
export function StaleBar({ asOf }: { asOf: string }) {
  const [stale, setStale] = useState(false);
  useEffect(() => {
    let left = false;
    // The browser may believe that it is online when it isn't, so the server itself is asked.
    const look = async () => {
      const reached = await fetch('/healthz', { cache: 'no-store' }).then(
        (answer) => answer.ok,
        () => false,
      );
      if (!left) setStale(!reached || Date.now() - new Date(asOf).getTime() > FRESH_FOR);
    };
    void look();
    window.addEventListener('online', look);
    window.addEventListener('offline', look);
    const timer = setInterval(look, 60_000);
    return () => {
      left = true;
      window.removeEventListener('online', look);
      window.removeEventListener('offline', look);
      clearInterval(timer);
    };
  }, [asOf]);
  if (!stale) return null;
  return (
    <div className={css.stale} role="alert">
      This copy is from {sayTime(asOf)} and may be out of date. It is renewed when this device is online.
    </div>
  );
}
