'use client';
// What was typed for the next revision, kept in this browser until it is imported or thrown away.
import { useEffect, useState } from 'react';
import type { Typed } from './sheet-grid.ts';

export type Kept = { readonly revision: string; readonly typed: Typed };
const NOTHING: Kept = { revision: '', typed: {} };

export function useKeptCells(sheetId: string): readonly [Kept, (next: Kept | null) => void] {
  const key = `sheet ${sheetId}`;
  const [kept, setKept] = useState(NOTHING);
  useEffect(() => {
    const stored = localStorage.getItem(key);
    if (stored) setKept(JSON.parse(stored) as Kept);
  }, [key]);
  const keep = (next: Kept | null) => {
    setKept(next ?? NOTHING);
    if (next) localStorage.setItem(key, JSON.stringify(next));
    else localStorage.removeItem(key);
  };
  return [kept, keep];
}
