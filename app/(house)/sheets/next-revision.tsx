'use client';
import { useDeferredValue, useMemo } from 'react';
import { readSheet, type Sheet, type SheetProblem } from '../../../lib/aircraft/sheet.ts';
import { checkSheet } from '../../../lib/envelope/sheet-check.ts';
import { ActForm } from '../../_ui/act-form.tsx';
import { Button } from '../../_ui/button.tsx';
import { Field } from '../../_ui/field.tsx';
import { Notice } from '../../_ui/notice.tsx';
import { Section } from '../../_ui/page-head.tsx';
import { bringIn } from './actions.ts';
import { ChangeTable } from './change-table.tsx';
import { GridTable } from './grid-table.tsx';
import { useKeptCells } from './kept-cells.ts';
import css from './sheet.module.css';
import { sheetChanges } from './sheet-changes.ts';
import { gridsOf, nextSheet } from './sheet-grid.ts';

/** A draft of the next revision: the figures in cells, read and checked while typing, imported as a whole. */
export function NextRevision({ sheetId, sheet }: { sheetId: string; sheet: Sheet }) {
  const [kept, keep] = useKeptCells(sheetId);
  const data = useDeferredValue(useMemo(() => nextSheet(sheet, kept.revision, kept.typed), [sheet, kept]));
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
      <Problems problems={problems} readable={read.ok} />
      <Section title="Make it a revision">
        <ActForm
          act={async () => {
            const text = JSON.stringify(nextSheet(sheet, kept.revision, kept.typed));
            const answer = await bringIn({ text, name: `revision ${kept.revision}` });
            if (answer.ok) keep(null);
            return answer;
          }}
          onDone={({ revisionId }) => ({ go: `/sheets/${revisionId}` })}
          button="Import this revision"
        >
          <Field
            label="Name of the revision"
            required
            value={kept.revision}
            onChange={(event) => keep({ ...kept, revision: event.target.value })}
            hint={`It follows ${sheet.revision}. Procedures that rest on ${sheet.revision} keep it until they are checked anew.`}
          />
        </ActForm>
        <div>
          <Button look="grave" onClick={() => keep(null)} disabled={Object.keys(kept.typed).length === 0}>
            Discard what I typed
          </Button>
        </div>
      </Section>
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
