'use client';
import { useDeferredValue, useMemo } from 'react';
import type { Sheet } from '../../../../lib/aircraft/sheet.ts';
import { readTable } from '../../../../lib/mode/table-text.ts';
import { Button } from '../../../_ui/button.tsx';
import { Section } from '../../../_ui/page-head.tsx';
import { useKeptCells } from '../kept-cells.ts';
import { MakeRevision } from '../make-revision.tsx';
import { ModeRows } from './mode-rows.tsx';
import { RuleList } from './rule-list.tsx';
import css from './table.module.css';
import { TablePanel } from './table-panel.tsx';
import { useTable } from './use-table.ts';

/** The mode table of the next revision in cells: the rules, beside them one axis drawn and what is odd about the table. */
export function NextModes({ sheetId, sheet }: { sheetId: string; sheet: Sheet }) {
  const [kept, keep] = useKeptCells(sheetId);
  const at = useTable(sheet.modes, kept, keep);
  const { table } = at;
  const slow = useDeferredValue(table);
  const read = useMemo(() => readTable(slow), [slow]);
  const { problems } = read;
  return (
    <>
      <p className="small">
        A rule says who does what, under which modes it is taken, and what follows. Enter goes to the same cell of the
        next rule, Shift with Enter back. What you type is kept in this browser until you import or discard it.
      </p>
      <div className={css.desk}>
        <div className={css.table}>
          <RuleList table={table} base={at.base} problems={problems} hands={at.rules} />
          <div className={css.below}>
            <Button onClick={at.addRule}>Add a rule</Button>
            <Button onClick={at.takeBack} disabled={!at.canTakeBack}>
              Take back the last row added or removed
            </Button>
          </div>
        </div>
        <TablePanel read={read} table={table} sheet={sheet} stale={slow !== table} />
      </div>
      <ModeRows at={at} problems={problems} />
      <Section title="As it was">
        <div>
          <Button look="grave" onClick={at.asInSheet} disabled={kept.table === undefined}>
            Put the table back as in revision {sheet.revision}
          </Button>
        </div>
      </Section>
      <MakeRevision sheet={sheet} kept={kept} keep={keep} />
    </>
  );
}
