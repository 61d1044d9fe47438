'use client';
import { useCallback, useRef, useState } from 'react';
import type { Sheet } from '../../../../lib/aircraft/sheet.ts';
import type { ReadTable, TableText } from '../../../../lib/mode/table-text.ts';
import { Button } from '../../../_ui/button.tsx';
import { AXES, type Axis } from '../mode-grid.ts';
import { ArmingTable } from '../mode-matrix.tsx';
import { AxisScore } from './axis-score.tsx';
import css from './score.module.css';
import { goToCell } from './table-cell.tsx';
import { TableFindings } from './table-findings.tsx';
import { placeIn } from './table-place.ts';
import { useTableCheck } from './use-table-check.ts';

const MOST_SHOWN = 6;

/** Beside the grid: cells that can't be read, what is odd about the table as last read, and one axis drawn. */
export function TablePanel(props: { read: ReadTable; table: TableText; sheet: Sheet; stale: boolean }) {
  const { read, table, sheet, stale } = props;
  const [axis, setAxis] = useState<Axis | 'armed'>('vertical');
  const { answer, of, failed } = useTableCheck(read.modes);
  const newest = useRef(table);
  newest.current = table;
  const go = useCallback((at: string) => {
    const place = placeIn(newest.current, at);
    if (place) goToCell(place.row, place.cell);
  }, []);
  const working = stale || (read.modes !== null && of !== read.modes);
  const drawn = of ?? sheet.modes;
  return (
    <aside className={css.panel} aria-label="Self-check and drawing">
      <h2>Self-check</h2>
      <p role="status" className="small">
        {statusWords(read, working, answer === null)}
      </p>
      {failed && <p role="alert">The table could not be explored: {failed}.</p>}
      {read.problems.length > 0 && (
        <ul className={css.findings}>
          {read.problems.slice(0, MOST_SHOWN).map(({ row, cell, says }) => (
            <li key={`${row} ${cell} ${says}`}>
              <b>Can not be read:</b> {says}.{' '}
              <Button look="plain" className={css.place} onClick={() => goToCell(row, cell)}>
                Go to the cell
              </Button>
            </li>
          ))}
          {read.problems.length > MOST_SHOWN && <li>and {read.problems.length - MOST_SHOWN} more</li>}
        </ul>
      )}
      {answer && <TableFindings answer={answer} onPlace={go} />}
      <h2>One axis</h2>
      <div className={css.axes} role="group" aria-label="Axis that is drawn">
        {([...AXES, 'armed'] as const).map((one) => (
          <Button key={one} look="plain" aria-pressed={one === axis} onClick={() => setAxis(one)}>
            {one}
          </Button>
        ))}
      </div>
      {axis === 'armed' ? (
        <ArmingTable modes={drawn} />
      ) : (
        <>
          {answer && answer.refused.length === 0 && (
            <AxisScore axis={axis} words={drawn[axis]} strokes={answer.strokes[axis]} onRule={go} />
          )}
          <p className="small">
            A ring is a word that the rule takes, the arrow where it leads, as far as it can be reached.
          </p>
        </>
      )}
    </aside>
  );
}

function statusWords(read: ReadTable, working: boolean, first: boolean): string {
  if (read.modes === null) {
    const cells = read.problems.length === 1 ? 'One cell' : `${read.problems.length} cells`;
    return `${cells} can not be read yet; below is the table as it could last be read.`;
  }
  if (working || first) return 'Exploring …';
  return 'Every state that the table allows was looked at.';
}
