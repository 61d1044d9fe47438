import type { ReactNode } from 'react';
import type { Finding, Witness } from '../../lib/check/finding.ts';
import { wordOfField } from '../../lib/diff/describe.ts';
import type { Expect } from '../../lib/procedure/procedure.ts';
import { typeset } from '../../lib/units/format.ts';
import css from './finding.module.css';
import { StepThrough } from './path.tsx';

/** The witness as one line: the words, the place that is empty, the order, or the point of the envelope. */
export function sayWitness(witness: Witness): string {
  switch (witness.kind) {
    case 'text':
      return `${wordOfField(witness.field)}: “${witness.quote}”`;
    case 'absent':
      return `${wordOfField(witness.field)}: nothing is written there`;
    default:
      return witness.says;
  }
}

/** One finding: severity in words, where, the consequence, the witness, and what can be done. `expected`: the mode line that
 *  its step tells the crew to expect. */
export function FindingCard(props: {
  finding: Finding;
  where: ReactNode;
  answered?: string;
  others?: number;
  expected?: Expect | undefined;
  children?: ReactNode;
}) {
  const { finding, where, answered, others = 0, expected, children } = props;
  return (
    <div className={`${css.finding} ${css[finding.severity]}`}>
      <span className={css.kind}>
        {finding.severity} · {finding.check.replaceAll('-', ' ')} · <span className={css.place}>{where}</span>
      </span>
      <span>{typeset(finding.message)}</span>
      {others > 0 && (
        <span className="small">
          Same cause at {others} more {others === 1 ? 'place' : 'places'}
        </span>
      )}
      <span className={css.witness}>{typeset(sayWitness(finding.witness))}</span>
      {finding.witness.kind === 'path' && <StepThrough path={finding.witness} expected={expected} />}
      {answered && <span className={css.answered}>{answered}</span>}
      {children}
    </div>
  );
}

export const findingListClass = css.list;
