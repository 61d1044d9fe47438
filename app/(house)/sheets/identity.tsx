import type { Sheet, SheetProblem } from '../../../lib/aircraft/sheet.ts';
import type { RevisionLine } from '../../../lib/server/aircraft.ts';
import { Notice } from '../../_ui/notice.tsx';
import { Section } from '../../_ui/page-head.tsx';
import { sayTime } from '../../_ui/when.tsx';
import css from './sheet.module.css';

export function Identity({ sheet, line }: { sheet: Sheet; line: RevisionLine }) {
  const facts = [
    ['Type', `${sheet.name}, ${sheet.type}`],
    ['Revision', sheet.revision],
    ['Imported', `${line.importedBy}, ${sayTime(line.importedAt)}`],
    ['Content', `sha-256 ${line.sha256}`],
  ];
  return (
    <>
      {sheet.note && <Notice kind="caution">{sheet.note}</Notice>}
      <Section title="Which sheet">
        <dl className={css.facts}>
          {facts.map(([name, said]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{said}</dd>
            </div>
          ))}
        </dl>
        <ul className={css.says}>
          {Object.entries(sheet.documents).map(([key, document]) => (
            <li key={key}>
              {key}: {document.title},{' '}
              <span className={document.seen ? undefined : css.memory}>{document.seen ? 'seen' : 'from memory'}</span>
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}

/** What looks wrong in the sheet, proven over all weights where it speaks of weight. */
export function SelfCheck({ problems }: { problems: readonly SheetProblem[] }) {
  return (
    <Section title="What looks wrong">
      {problems.length === 0 ? (
        <p>Nothing was found: order of weights, limits and speeds at every weight, tables from end to end, sources.</p>
      ) : (
        <ul className={css.says}>
          {problems.map((one) => (
            <li key={`${one.at} ${one.message}`}>
              {one.message} <span className={css.place}>{one.at}</span>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
