'use client';
import { useCallback, useMemo, useRef, useState } from 'react';
import type { ModeSet } from '../../../../lib/aircraft/mode-set.ts';
import { type TableText, tableText } from '../../../../lib/mode/table-text.ts';
import type { Keep, Kept } from '../kept-cells.ts';
import type { RowHands } from './row-table.tsx';
import type { RuleHands } from './rule-block.tsx';
import { goToCell } from './table-cell.tsx';
import * as edits from './table-edits.ts';

const MOST_BACK = 100;

/** The table at hand with what can be done to it. Rows that were added or removed can be taken back; typing is undone by the
 *  field's own keys. */
export function useTable(modes: ModeSet, kept: Kept, keep: Keep) {
  const base = useMemo(() => tableText(modes), [modes]);
  const table = kept.table ?? base;
  const now = useRef({ table, kept });
  now.current = { table, kept };
  const back = useRef<readonly TableText[]>([]);
  const [depth, setDepth] = useState(0);

  const put = useCallback(
    (next: TableText, remember: boolean) => {
      const { table: before, kept: held } = now.current;
      if (next === before) return;
      if (remember) back.current = [...back.current, before].slice(-MOST_BACK);
      now.current = { table: next, kept: { ...held, table: next } };
      setDepth(back.current.length);
      keep(now.current.kept);
    },
    [keep],
  );
  const putAndGo = useCallback(
    ({ table: next, key }: edits.Made, cell: string) => {
      put(next, true);
      requestAnimationFrame(() => goToCell(key, cell));
    },
    [put],
  );
  const settle = useCallback((was: string, is: string) => put(edits.renamed(now.current.table, was, is), false), [put]);
  const rules: RuleHands = useMemo(
    () => ({
      type: (key, cell, words) => put(edits.typeRule(now.current.table, key, cell, words), false),
      settle,
      add: (after) => putAndGo(edits.addRule(now.current.table, after), 'event'),
      duplicate: (key) => putAndGo(edits.duplicateRule(now.current.table, key), 'event'),
      remove: (key) => put(edits.removeRule(now.current.table, key), true),
      addCase: (rule) => putAndGo(edits.addCase(now.current.table, rule), 'when.thrust'),
      removeCase: (key) => put(edits.removeCase(now.current.table, key), true),
    }),
    [put, putAndGo, settle],
  );
  const rows: RowHands = useMemo(
    () => ({
      type: (list, key, cell, words) => put(edits.typeRow(now.current.table, list, key, cell, words), false),
      settle,
      add: (list, like) => putAndGo(edits.addRow(now.current.table, list, like), edits.ROW_CELLS[list][0]!),
      remove: (list, key) => put(edits.removeRow(now.current.table, list, key), true),
    }),
    [put, putAndGo, settle],
  );
  const typeList = useCallback(
    (_: string, list: string, words: string) => put(edits.typeList(now.current.table, list, words), false),
    [put],
  );
  const addRule = useCallback(() => putAndGo(edits.addRule(now.current.table, null), 'event'), [putAndGo]);
  const takeBack = useCallback(() => {
    const last = back.current.at(-1);
    if (!last) return;
    back.current = back.current.slice(0, -1);
    put(last, false);
  }, [put]);
  const asInSheet = useCallback(() => put(base, true), [put, base]);
  return { base, table, rules, rows, typeList, settle, addRule, takeBack, canTakeBack: depth > 0, asInSheet };
}
