'use client';
import { memo } from 'react';
import type { CellProblem, RowList, TextRow } from '../../../../lib/mode/table-text.ts';
import { Button } from '../../../_ui/button.tsx';
import { Section } from '../../../_ui/page-head.tsx';
import { ScrollBox } from '../../../_ui/scroll-box.tsx';
import css from './table.module.css';
import { CellSays, TableCell } from './table-cell.tsx';

export type RowHands = {
  readonly type: (list: RowList, key: string, cell: string, words: string) => void;
  readonly settle: (was: string, is: string) => void;
  readonly add: (list: RowList, like: string | null) => void;
  readonly remove: (list: RowList, key: string) => void;
};

/** Rows of texts under column heads: add, duplicate, remove. `follow`: the column whose new name other cells follow. */
export const RowTable = memo(function RowTable(props: {
  list: RowList;
  title: string;
  says: string;
  columns: readonly (readonly [cell: string, name: string])[];
  rows: readonly TextRow[];
  was: readonly TextRow[];
  problems: readonly CellProblem[];
  hands: RowHands;
  follow?: string;
  one: string;
}) {
  const { list, title, says, columns, rows, was, problems, hands, follow, one } = props;
  const nameOf = (cell: string) => columns.find(([key]) => key === cell)?.[1] ?? cell;
  return (
    <Section title={title}>
      <p className="small">{says}</p>
      {rows.length > 0 && (
        <ScrollBox>
          <table className={css.rows}>
            <thead>
              <tr>
                {columns.map(([cell, name]) => (
                  <th key={cell} scope="col">
                    {name}
                  </th>
                ))}
                <th scope="col">
                  <span className="unseen">What can be done</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row, at) => {
                const mine = problems.filter((problem) => problem.row === row.key);
                return (
                  <tr key={row.key}>
                    {columns.map(([cell, name], column) => (
                      <td key={cell}>
                        <TableCell
                          row={row.key}
                          cell={cell}
                          label={`${title}, ${one} ${at + 1}, ${name}`}
                          text={row.cells[cell]!}
                          was={was.find(({ key }) => key === row.key)?.cells[cell]}
                          says={mine.find((problem) => problem.cell === cell)?.says}
                          onTyped={(key, typed, words) => hands.type(list, key, typed, words)}
                          onSettled={cell === follow ? hands.settle : undefined}
                        />
                        {column === 0 && <CellSays problems={mine} nameOf={nameOf} />}
                      </td>
                    ))}
                    <td>
                      <span className={css.acts}>
                        <Button look="plain" onClick={() => hands.add(list, row.key)}>
                          Duplicate
                          <span className="unseen">
                            {' '}
                            {one} {at + 1}
                          </span>
                        </Button>
                        <Button look="plain" onClick={() => hands.remove(list, row.key)}>
                          Remove
                          <span className="unseen">
                            {' '}
                            {one} {at + 1}
                          </span>
                        </Button>
                      </span>
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </ScrollBox>
      )}
      <div>
        <Button onClick={() => hands.add(list, null)}>Add {one}</Button>
      </div>
    </Section>
  );
});
