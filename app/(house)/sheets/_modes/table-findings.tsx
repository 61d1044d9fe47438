'use client';
import type { TableProblem } from '../../../../lib/mode/self-check.ts';
import { formatNumber, typeset } from '../../../../lib/units/format.ts';
import { Button } from '../../../_ui/button.tsx';
import css from './score.module.css';
import type { TableAnswer, TableFinding } from './table-answer.ts';

const KINDS: Readonly<Record<TableProblem['kind'], string>> = {
  'two-for-one-event': 'Two answers to one event',
  'no-way-out': 'Can not be left',
  'never-reached': 'Can not be reached',
  'never-true': 'Never true',
  'no-effect': 'No effect',
};

/** What the self-check found, each with a sentence, the path to it, and a way to its row. */
export function TableFindings({ answer, onPlace }: { answer: TableAnswer; onPlace: (at: string) => void }) {
  const everywhere = answer.standards.length;
  if (answer.refused.length > 0) {
    return (
      <ul className={css.findings}>
        {answer.refused.map(({ at, because }) => (
          <li key={`${at} ${because}`}>
            <b>Can not be explored:</b> {because}. <Place at={at} onPlace={onPlace} />
          </li>
        ))}
      </ul>
    );
  }
  return (
    <>
      {answer.findings.length === 0 && <p className="small">Nothing odd.</p>}
      <ul className={css.findings}>
        {answer.findings.map((one) => (
          <li key={`${one.kind} ${one.at} ${one.message}`}>
            <b>{KINDS[one.kind]}:</b> {typeset(one.message)}
            {one.standards.length < everywhere && ` on standard ${one.standards.join(' and ')}`}.{' '}
            <Place at={one.at} onPlace={onPlace} />
            <Way finding={one} />
          </li>
        ))}
      </ul>
      <p className="small">{exploredWords(answer)}</p>
    </>
  );
}

function Place({ at, onPlace }: { at: string; onPlace: (at: string) => void }) {
  if (at === '') return null;
  return (
    <Button look="plain" className={css.place} onClick={() => onPlace(at)}>
      Go to {at.split('.').slice(0, 2).join(' ')}
    </Button>
  );
}

function Way({ finding }: { finding: TableFinding }) {
  const moves = finding.witness.filter((step) => step.who !== 'start');
  if (moves.length === 0) return null;
  return <div className="small">After {moves.map((step) => `${step.rule} ${step.does}`).join(', then ')}.</div>;
}

function exploredWords(answer: TableAnswer): string {
  return answer.standards
    .map(({ standard, states, edges, reason }) => {
      const size = `${formatNumber(states)} states, ${formatNumber(edges)} edges`;
      return `Standard ${standard}: ${size}${reason === null ? '' : `; not complete: ${reason}`}.`;
    })
    .join(' ');
}
