import { Section } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { sayNumber } from './figures.ts';
import css from './sheet.module.css';
import type { SheetChange } from './sheet-changes.ts';

export function ChangeTable({ changes }: { changes: readonly SheetChange[] }) {
  return (
    <Section title={changes.length === 1 ? 'One change' : `${changes.length} changes`}>
      <ScrollBox>
        <table>
          <thead>
            <tr>
              <th>Place</th>
              <th>Was</th>
              <th>Is</th>
              <th>By</th>
            </tr>
          </thead>
          <tbody>
            {changes.map((change) => (
              <tr key={change.at}>
                <td className={css.place}>{change.at}</td>
                <td>{change.was ? <span className={css.was}>{change.was}</span> : 'nothing'}</td>
                <td>{change.is ? <span className={css.is}>{change.is}</span> : 'nothing'}</td>
                <td>{change.more === null ? '' : `${change.more > 0 ? '+' : ''}${sayNumber(change.more)}`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </Section>
  );
}
