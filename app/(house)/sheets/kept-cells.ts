'use client';
// What was typed for the next revision, kept in this browser until it is imported or thrown away.
import { useCallback, useEffect, useState } from 'react';
import type { TableText } from '../../../lib/mode/table-text.ts';
import type { Typed } from './sheet-grid.ts';

/** `table`: the mode table in cells, once somebody has touched it. */
export type Kept = { readonly revision: string; readonly typed: Typed; readonly table?: TableText };
export type Keep = (next: Kept | null) => void;
const NOTHING: Kept = { revision: '', typed: {} };

export const untouched = (kept: Kept): boolean => Object.keys(kept.typed).length === 0 && kept.table === undefined;

export function useKeptCells(sheetId: string): readonly [Kept, Keep] {
  const key = `sheet ${sheetId}`;
  const [kept, setKept] = useState(NOTHING);
  useEffect(() => {
    const stored = localStorage.getItem(key);
    if (stored) setKept(JSON.parse(stored) as Kept);
  }, [key]);
  const keep = useCallback(
    (next: Kept | null) => {
      setKept(next ?? NOTHING);
      if (next) localStorage.setItem(key, JSON.stringify(next));
      else localStorage.removeItem(key);
    },
    [key],
  );
  return [kept, keep];
}
