'use client';
import { useEffect } from 'react';

/** What is read is kept on this device, so that it opens without a network; signing out takes it off. */
export function KeepForOffline() {
  useEffect(() => {
    navigator.serviceWorker?.register('/reader-worker.js').catch(() => undefined);
  }, []);
  return null;
}
