'use client';
import { memo } from 'react';
import type { CellProblem, ListName, TextRow } from '../../../../lib/mode/table-text.ts';
import { Section } from '../../../_ui/page-head.tsx';
import css from './table.module.css';
import { CellSays, TableCell } from './table-cell.tsx';

const LISTS: readonly (readonly [ListName, string])[] = [
  ['thrust', 'Thrust'],
  ['lateral', 'Lateral'],
  ['vertical', 'Vertical'],
  ['armedVertical', 'Armed vertically'],
  ['armedLateral', 'Armed laterally'],
  ['rel', 'Selected altitude, seen from the aircraft'],
  ['phase', 'Phase'],
  ['climbing', 'Vertical modes that climb'],
  ['descending', 'Vertical modes that descend'],
  ['levels', 'Vertical modes that keep the altitude'],
  ['armsAlways', 'Vertical modes that arm the selected altitude wherever it lies'],
  ['manual', 'Thrust that the guidance leaves alone'],
  ['unprotected', 'Thrust under which nothing keeps the speed'],
  ['reversions', 'Rules by which it leaves a mode that nobody asked it to leave'],
  ['source', 'Where the table comes from'],
];
const AXES = new Set<string>(['thrust', 'lateral', 'vertical', 'armedVertical', 'armedLateral', 'rel', 'phase']);

/** The words of each axis, parted by commas, and what is special of some of them. */
export const WordLists = memo(function WordLists(props: {
  lists: TextRow;
  was: TextRow;
  problems: readonly CellProblem[];
  onTyped: (row: string, cell: string, words: string) => void;
  onSettled: (was: string, is: string) => void;
}) {
  const { lists, was, problems, onTyped, onSettled } = props;
  return (
    <Section title="Words of each axis">
      <p className="small">Parted by commas. A word that is given another name here is renamed in every rule.</p>
      <div className={css.lists}>
        {LISTS.map(([list, name]) => {
          const mine = problems.filter((one) => one.cell === list);
          return (
            <div key={list} className={css.list}>
              <span className={css.listName} aria-hidden="true">
                {name}
              </span>
              <TableCell
                row="lists"
                cell={list}
                label={`Words: ${name}`}
                text={lists.cells[list]!}
                was={was.cells[list]}
                says={mine[0]?.says}
                onTyped={onTyped}
                onSettled={AXES.has(list) ? onSettled : undefined}
              />
              <CellSays problems={mine} nameOf={() => ''} />
            </div>
          );
        })}
      </div>
    </Section>
  );
});
