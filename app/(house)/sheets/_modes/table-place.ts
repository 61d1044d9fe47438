// Where a finding of the table stands: `T05`, `vertical.LEVEL`, `predicates.low`, `initial.0.rel`, `climbing`. Pure.
import type { TableText, TextRow } from '../../../../lib/mode/table-text.ts';

export type TablePlace = { readonly row: string; readonly cell: string };

export function placeIn(table: TableText, at: string): TablePlace | null {
  const [head, second = ''] = at.split('.') as [string, string?];
  const rule = table.rules.find((one) => one.cells.id!.trim() === head);
  if (rule) return { row: rule.key, cell: 'event' };
  const named = (rows: readonly TextRow[], cell: string): TablePlace | null => {
    const row = rows.find((one) => one.cells.name?.trim() === second) ?? rows[Number(second)] ?? rows[0];
    return row ? { row: row.key, cell } : null;
  };
  switch (head) {
    case 'initial':
      return named(table.start, 'thrust');
    case 'controls':
      return named(table.controls, 'rules');
    case 'environment':
      return named(table.environment, 'rules');
    case 'predicates':
      return named(table.predicates, 'text');
    case 'standards':
      return named(table.standards, 'name');
    case 'armed': {
      const vertical = table.lists.cells.armedVertical!.split(',').some((word) => word.trim() === second);
      return { row: 'lists', cell: vertical ? 'armedVertical' : 'armedLateral' };
    }
    default:
      return head in table.lists.cells ? { row: 'lists', cell: head } : null;
  }
}
