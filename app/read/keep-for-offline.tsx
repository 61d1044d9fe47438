'use client';
import { usePathname } from 'next/navigation';
import { useEffect } from 'react';

/** This page and those that it leads to are kept on this device, so that they open without a network. */
export function KeepForOffline() {
  const path = usePathname();
  useEffect(() => {
    let left = false;
    const keep = async () => {
      await navigator.serviceWorker?.register('/reader-worker.js');
      const { active } = (await navigator.serviceWorker?.ready) ?? {};
      const links = [...document.querySelectorAll<HTMLAnchorElement>('a[href^="/read/"]')].map((link) => link.pathname);
      if (!left) active?.postMessage({ type: 'KEEP', paths: [path, ...links] });
    };
    keep().catch(() => undefined);
    return () => {
      left = true;
    };
  }, [path]);
  return null;
}
