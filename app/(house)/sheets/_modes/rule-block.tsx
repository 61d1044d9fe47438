'use client';
import { memo } from 'react';
import { COLUMNS } from '../../../../lib/mode/cell-words.ts';
import type { CellProblem, TextRow, TextRule } from '../../../../lib/mode/table-text.ts';
import { Button } from '../../../_ui/button.tsx';
import css from './table.module.css';
import { CellSays, cellId, TableCell } from './table-cell.tsx';

export const COLUMN_NAMES: Readonly<Record<string, string>> = {
  thrust: 'thrust',
  lateral: 'lateral',
  vertical: 'vertical',
  armed_vertical: 'armed vertically',
  armed_lateral: 'armed laterally',
  rel: 'selected altitude',
  phase: 'phase',
  is: 'condition',
};
const WHO = [
  ['crew', 'crew'],
  ['auto', 'by itself'],
  ['environment', 'from outside'],
] as const;

const nameOf = (cell: string): string => {
  const [side, column] = cell.split('.');
  if (column === undefined) return cell === 'id' ? 'number' : cell === 'effect' ? 'in words' : cell;
  return `${side === 'when' ? 'only when' : 'then'}, ${COLUMN_NAMES[column]}`;
};

export type RuleHands = {
  readonly type: (key: string, cell: string, words: string) => void;
  readonly settle: (was: string, is: string) => void;
  readonly add: (after: string) => void;
  readonly duplicate: (key: string) => void;
  readonly remove: (key: string) => void;
  readonly addCase: (rule: string) => void;
  readonly removeCase: (key: string) => void;
};

/** One rule: who and what happens, under which modes, and what follows on each axis, the two lines one above the other. */
export const RuleBlock = memo(function RuleBlock(props: {
  rule: TextRule;
  was: TextRule | undefined;
  problems: readonly CellProblem[];
  /** What hand raises it, in words. */
  raised: string;
  conditions: boolean;
  hands: RuleHands;
}) {
  const { rule, was, problems, raised, conditions, hands } = props;
  const id = rule.cells.id!.trim();
  const name = `Rule ${id || 'without a number'}`;
  const saysOf = (row: string, cell: string) => problems.find((one) => one.row === row && one.cell === cell)?.says;
  const cell = (of: TextRow, wasOf: TextRow | undefined, key: string, className?: string) => (
    <TableCell
      key={key}
      row={of.key}
      cell={key}
      label={`${name}, ${nameOf(key)}`}
      text={of.cells[key]!}
      was={wasOf?.cells[key]}
      says={saysOf(of.key, key)}
      onTyped={hands.type}
      onSettled={key === 'id' ? hands.settle : undefined}
      className={className}
    />
  );
  return (
    <li id={id || undefined} className={css.rule} aria-label={name}>
      <div className={css.head}>
        {cell(rule, was, 'id', css.id)}
        <select
          id={cellId(rule.key, 'who')}
          aria-label={`${name}, who`}
          className={css.who}
          value={rule.cells.who}
          onChange={(event) => hands.type(rule.key, 'who', event.target.value)}
        >
          {WHO.map(([value, word]) => (
            <option key={value} value={value}>
              {word}
            </option>
          ))}
        </select>
        {cell(rule, was, 'event', css.event)}
        <span className={css.acts}>
          <Button look="plain" onClick={() => hands.add(rule.key)}>
            Add below<span className="unseen"> {id}</span>
          </Button>
          <Button look="plain" onClick={() => hands.duplicate(rule.key)}>
            Duplicate<span className="unseen"> {id}</span>
          </Button>
          <Button look="plain" onClick={() => hands.addCase(rule.key)}>
            Add a case<span className="unseen"> to {id}</span>
          </Button>
          <Button look="plain" onClick={() => hands.remove(rule.key)}>
            Remove<span className="unseen"> {id}</span>
          </Button>
        </span>
      </div>
      {rule.cases.map((one, at) => (
        <div key={one.key} className={css.case}>
          <div className={css.line}>
            <span className={css.side}>only when</span>
            {COLUMNS.map((column) => cell(one, was?.cases[at], `when.${column}`))}
            {conditions && cell(one, was?.cases[at], 'when.is')}
          </div>
          <div className={css.line}>
            <span className={css.side}>then</span>
            {COLUMNS.map((column) => cell(one, was?.cases[at], `then.${column}`, css.then))}
            {rule.cases.length > 1 && (
              <Button look="plain" className={css.removeCase} onClick={() => hands.removeCase(one.key)}>
                Remove case {at + 1}
              </Button>
            )}
          </div>
        </div>
      ))}
      <div className={css.line}>
        <span className={css.side}>in words</span>
        {cell(rule, was, 'effect', css.effect)}
      </div>
      {rule.cells.who !== 'environment' && raised && <p className={css.raised}>raised by: {raised}</p>}
      <CellSays problems={problems} nameOf={nameOf} />
    </li>
  );
});
