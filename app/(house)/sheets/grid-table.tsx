import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { Section } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import css from './grid.module.css';
import { figureAt, type Grid, isText, pasted, type Typed } from './sheet-grid.ts';

export function GridTable(props: {
  grid: Grid;
  sheet: Sheet;
  typed: Typed;
  wrong: readonly string[];
  onTyped: (typed: Typed) => void;
}) {
  const { grid, sheet, typed, wrong, onTyped } = props;
  return (
    <Section title={grid.title}>
      <ScrollBox>
        <table className={css.grid}>
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">What</span>
              </th>
              {grid.columns.map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {grid.rows.map((row, down) => (
              <tr key={row.label + row.cells.join()}>
                <th scope="row">{row.label}</th>
                {row.cells.map((path, right) => (
                  <td key={grid.columns[right]}>
                    {path && (
                      <input
                        aria-label={`${grid.title}: ${row.label}, ${grid.columns[right]}`}
                        className={[path in typed && css.typed, isText(sheet, path) && css.text]
                          .filter(Boolean)
                          .join(' ')}
                        inputMode={isText(sheet, path) ? 'text' : 'decimal'}
                        value={typed[path] ?? figureAt(sheet, path)}
                        aria-invalid={wrong.includes(path) || undefined}
                        onChange={(event) => onTyped({ [path]: event.target.value })}
                        onPaste={(event) => {
                          const text = event.clipboardData.getData('text');
                          if (!/[\t\n]/.test(text)) return;
                          event.preventDefault();
                          onTyped(pasted(grid, down, right, text));
                        }}
                      />
                    )}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </Section>
  );
}
