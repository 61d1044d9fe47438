'use client';
import { useDeferredValue, useMemo } from 'react';
import { readSheet, type Sheet, type SheetProblem } from '../../../lib/aircraft/sheet.ts';
import { checkSheet } from '../../../lib/envelope/sheet-check.ts';
import { readTable } from '../../../lib/mode/table-text.ts';
import { Notice } from '../../_ui/notice.tsx';
import { ChangeTable } from './change-table.tsx';
import { GridTable } from './grid-table.tsx';
import { useKeptCells } from './kept-cells.ts';
import { MakeRevision } from './make-revision.tsx';
import css from './sheet.module.css';
import { sheetChanges } from './sheet-changes.ts';
import { gridsOf, nextSheet } from './sheet-grid.ts';

/** A draft of the next revision: the figures in cells, read and checked while typing, imported as a whole. */
export function NextRevision({ sheetId, sheet }: { sheetId: string; sheet: Sheet }) {
  const [kept, keep] = useKeptCells(sheetId);
  const table = useMemo(() => (kept.table ? readTable(kept.table) : null), [kept.table]);
  const modes = table?.modes ?? undefined;
  const data = useDeferredValue(
    useMemo(() => nextSheet(sheet, kept.revision, kept.typed, modes), [sheet, kept.revision, kept.typed, modes]),
  );
  const read = useMemo(() => readSheet(data), [data]);
  const problems = useMemo(() => (read.ok ? checkSheet(read.value) : read.error), [read]);
  const wrong = read.ok ? [] : problems.map((one) => one.at);
  const grids = useMemo(() => gridsOf(sheet), [sheet]);
  return (
    <>
      <p className="small">
        A block copied from a spreadsheet goes down and right from the cell where it is pasted. What you type is kept in
        this browser until you import or discard it.
      </p>
      {grids.map((grid) => (
        <GridTable
          key={grid.title}
          grid={grid}
          sheet={sheet}
          typed={kept.typed}
          wrong={wrong}
          onTyped={(typed) => keep({ ...kept, typed: { ...kept.typed, ...typed } })}
        />
      ))}
      {read.ok && <ChangeTable changes={sheetChanges(sheet, read.value)} />}
      {table && table.modes === null && (
        <Notice kind="stop" word="Cannot be read yet:">
          the mode table, in {table.problems.length} {table.problems.length === 1 ? 'cell' : 'cells'}.
        </Notice>
      )}
      <Problems problems={problems} readable={read.ok} />
      <MakeRevision sheet={sheet} kept={kept} keep={keep} />
    </>
  );
}

function Problems({ problems, readable }: { problems: readonly SheetProblem[]; readable: boolean }) {
  if (problems.length === 0) return null;
  return (
    <Notice kind={readable ? 'answer' : 'stop'} word={readable ? 'Looks wrong:' : 'Cannot be read yet:'}>
      <ul className={css.says}>
        {problems.map((one) => (
          <li key={`${one.at} ${one.message}`}>
            {one.message} <span className={css.place}>{one.at}</span>
          </li>
        ))}
      </ul>
    </Notice>
  );
}
