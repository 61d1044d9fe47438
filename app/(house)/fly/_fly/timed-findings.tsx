'use client';
import type { Checked } from '../../../../lib/check/check.ts';
import type { Finding, Moment } from '../../../../lib/check/finding.ts';
import { Button } from '../../../_ui/button.tsx';
import { FindingCard, findingListClass } from '../../../_ui/finding.tsx';
import { Notice } from '../../../_ui/notice.tsx';
import { useCursor } from './cursor.tsx';
import css from './fly.module.css';
import type { Given } from './fly-one.ts';

type Props = {
  checked: Checked | null;
  failed: string;
  label: (step: string) => string;
  onGiven: (given: Given) => void;
};

/** What the checks found that need time; a moment of a witness puts the page to its conditions and the cursor there. */
export function TimedFindings({ checked, failed, label, onGiven }: Props) {
  const cursor = useCursor();
  if (failed !== '') return <Notice kind="stop">The checks could not be asked: {failed}</Notice>;
  if (checked === null) return <p role="status">Asking the checks that need time …</p>;
  const { findings, notChecked, crashed } = checked;
  const asked = checked.checked.rules.length;
  const go = (finding: Finding, moment: Moment): void => {
    if (finding.witness.kind === 'flight') onGiven(finding.witness.conditions);
    cursor.set(moment.time);
  };
  return (
    <section className={css.findings} aria-label="Findings that need time">
      <h2>{headOf(findings.length, asked)} by the checks that need time</h2>
      <p className="small">
        {asked === 0
          ? 'None of them could be asked of this text.'
          : `Checked over ${checked.checked.envelope}: ${asked} ${asked === 1 ? 'check' : 'checks'}.`}
      </p>
      <div className={findingListClass}>
        {findings.map((finding) => (
          <FindingCard
            key={`${finding.check} ${finding.at.step} ${finding.read}`}
            finding={finding}
            where={finding.at.step === '' ? 'procedure' : label(finding.at.step)}
          >
            {finding.witness.kind === 'flight' && (
              <span className={css.moments}>
                {finding.witness.moments.map((moment) => (
                  <Button look="plain" key={`${moment.time} ${moment.says}`} onClick={() => go(finding, moment)}>
                    Show {Math.round(moment.time)} s: {moment.says}
                  </Button>
                ))}
              </span>
            )}
          </FindingCard>
        ))}
      </div>
      {crashed.map(({ check, error }) => (
        <Notice kind="stop" key={check}>
          The check {check.replaceAll('-', ' ')} failed to run: {error}
        </Notice>
      ))}
      {notChecked.length > 0 && (
        <details>
          <summary>{notChecked.length} not checked, and why</summary>
          <ul>
            {notChecked.map(({ check, because }, place) => (
              <li key={place}>
                {check.replaceAll('-', ' ')}: {because}
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

const headOf = (found: number, asked: number): string =>
  found > 0 ? `${found} found` : asked === 0 ? 'Nothing asked, nothing found' : 'Nothing found';
