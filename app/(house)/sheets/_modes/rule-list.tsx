'use client';
import { useMemo } from 'react';
import { COLUMNS } from '../../../../lib/mode/cell-words.ts';
import type { CellProblem, TableText, TextRow } from '../../../../lib/mode/table-text.ts';
import { ScrollBox } from '../../../_ui/scroll-box.tsx';
import { COLUMN_NAMES, RuleBlock, type RuleHands } from './rule-block.tsx';
import css from './table.module.css';

const NONE: readonly CellProblem[] = [];

/** The rules in the order of the table, under the names of the axes. */
export function RuleList(props: {
  table: TableText;
  base: TableText;
  problems: readonly CellProblem[];
  hands: RuleHands;
}) {
  const { table, base, problems, hands } = props;
  const was = useMemo(() => new Map(base.rules.map((rule) => [rule.key, rule])), [base]);
  const mine = useMemo(() => problemsByRule(table, problems), [table, problems]);
  const raised = useMemo(() => raisedBy(table.controls), [table.controls]);
  const conditions = table.predicates.length > 0;
  return (
    <ScrollBox>
      <div className={`${css.rules} ${conditions ? css.eight : css.seven}`}>
        <div className={`${css.line} ${css.heads}`} aria-hidden="true">
          <span />
          {[...COLUMNS, ...(conditions ? ['is'] : [])].map((column) => (
            <span key={column}>{COLUMN_NAMES[column]}</span>
          ))}
        </div>
        <ol className={css.ruleList} aria-label="Rules">
          {table.rules.map((rule) => (
            <RuleBlock
              key={rule.key}
              rule={rule}
              was={was.get(rule.key)}
              problems={mine.get(rule.key) ?? NONE}
              raised={raised.get(rule.cells.id!.trim()) ?? ''}
              conditions={conditions}
              hands={hands}
            />
          ))}
        </ol>
      </div>
    </ScrollBox>
  );
}

/** The same list for the same sentences, so that only rules with something new are drawn again. */
function problemsByRule(
  table: TableText,
  problems: readonly CellProblem[],
): ReadonlyMap<string, readonly CellProblem[]> {
  if (problems.length === 0) return new Map();
  const owner = new Map(table.rules.flatMap((rule) => [rule, ...rule.cases].map((row) => [row.key, rule.key])));
  const found = new Map<string, CellProblem[]>();
  for (const problem of problems) {
    const rule = owner.get(problem.row);
    if (rule !== undefined) found.set(rule, [...(found.get(rule) ?? []), problem]);
  }
  return found;
}

function raisedBy(controls: readonly TextRow[]): ReadonlyMap<string, string> {
  const by = new Map<string, string[]>();
  for (const { cells } of controls) {
    const hand = [cells.verbs!.split(',').join(' or').replaceAll(/\s+/g, ' ').trim(), cells.object, cells.value].filter(
      Boolean,
    );
    for (const rule of cells.rules!.split(',').map((one) => one.trim())) {
      by.set(rule, [...(by.get(rule) ?? []), hand.join(' ')]);
    }
  }
  return new Map([...by].map(([rule, hands]) => [rule, hands.join('; ')]));
}
