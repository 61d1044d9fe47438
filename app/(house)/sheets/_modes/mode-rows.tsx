'use client';
import { COLUMNS } from '../../../../lib/mode/cell-words.ts';
import type { CellProblem } from '../../../../lib/mode/table-text.ts';
import { RowTable } from './row-table.tsx';
import { COLUMN_NAMES } from './rule-block.tsx';
import type { useTable } from './use-table.ts';
import { WordLists } from './word-lists.tsx';

const START = COLUMNS.map((column) => [column, COLUMN_NAMES[column]!] as const);
const SECTIONS = [
  {
    list: 'controls',
    title: 'What a hand raises',
    says: 'Which action of a step raises which event. Where the value begins as said here, this row goes before one without a value.',
    one: 'control',
    columns: [
      ['verbs', 'Verbs of the step'],
      ['object', 'What stands in its object'],
      ['value', 'How its value begins'],
      ['rules', 'Rules that it raises'],
    ],
  },
  {
    list: 'environment',
    title: 'Surprises',
    says: 'What may come from outside, once, at any time. Without a rule the guidance takes no notice of it.',
    one: 'surprise',
    columns: [
      ['name', 'Name'],
      ['says', 'What happens'],
      ['rules', 'Rules that it raises'],
    ],
  },
  {
    list: 'predicates',
    title: 'Conditions',
    says: 'Speeds, heights and whatever else lies outside the modes, in gate notation; a guard asks for them by name.',
    one: 'condition',
    columns: [
      ['name', 'Name'],
      ['text', 'In gate notation'],
    ],
  },
  {
    list: 'standards',
    title: 'Guidance standards',
    says: 'Versions of the guidance software. What a standard does by itself is said in a cell: “A: ALT anew, B: ALT off”.',
    one: 'standard',
    columns: [
      ['name', 'Name'],
      ['says', 'What is special of it'],
    ],
  },
  {
    list: 'start',
    title: 'Where it begins',
    says: 'Mode lines before the first event.',
    one: 'line',
    columns: START,
  },
  {
    list: 'words',
    title: 'Spoken, and speed',
    says: 'How a word is spoken, and the speed that a vertical mode flies or a rule sets.',
    one: 'word',
    columns: [
      ['word', 'Word or rule'],
      ['spoken', 'Spoken'],
      ['speed', 'Speed'],
    ],
  },
] as const;

/** Everything of the table that is no rule. */
export function ModeRows({ at, problems }: { at: ReturnType<typeof useTable>; problems: readonly CellProblem[] }) {
  const of = (keys: ReadonlySet<string>) => problems.filter((one) => keys.has(one.row));
  return (
    <>
      <WordLists
        lists={at.table.lists}
        was={at.base.lists}
        problems={problems.filter((one) => one.row === 'lists')}
        onTyped={at.typeList}
        onSettled={at.settle}
      />
      {SECTIONS.map(({ list, title, says, one, columns }) => (
        <RowTable
          key={list}
          list={list}
          title={title}
          says={says}
          one={one}
          columns={columns}
          rows={at.table[list]}
          was={at.base[list]}
          problems={of(new Set(at.table[list].map((row) => row.key)))}
          hands={at.rows}
          {...(list === 'predicates' || list === 'standards' ? { follow: 'name' } : {})}
        />
      ))}
    </>
  );
}
