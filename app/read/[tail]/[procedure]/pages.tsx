'use client';
import { useMemo, useState } from 'react';
import { readSheet } from '../../../../lib/aircraft/sheet.ts';
import type { Step } from '../../../../lib/procedure/procedure.ts';
import type { ReadIssue } from '../../../../lib/server/reading.ts';
import { Notice } from '../../../_ui/notice.tsx';
import { ProcedureFacts } from '../../../_ui/procedure-facts.tsx';
import { cueText, NoticeLine } from '../../../_ui/script.tsx';
import css from '../../read.module.css';
import { AcknowledgeBar } from './acknowledge-bar.tsx';
import { bandsFor, figuresIn, NO_FIGURES, type Today } from './bands.ts';
import { ReaderStep } from './reader-step.tsx';
import { TodayForm } from './today-form.tsx';

/** The issue in force, as it is read: memory items marked, the band of each step in numbers, the cautions, the receipt. */
export function Pages({ issue, tail }: { issue: ReadIssue; tail: string }) {
  const { procedure, changedSince } = issue;
  const [today, setToday] = useState<Today>(NO_FIGURES);
  const sheet = useMemo(() => {
    const read = issue.sheet ? readSheet(issue.sheet.content) : null;
    return read?.ok ? read.value : null;
  }, [issue.sheet]);
  const bands = useMemo(
    () => (sheet ? bandsFor(procedure, sheet, issue.policy, today) : null),
    [procedure, sheet, issue.policy, today],
  );
  const figures = useMemo(
    () => (sheet ? figuresIn(procedure, sheet, issue.policy) : []),
    [procedure, sheet, issue.policy],
  );
  const changed = new Set(changedSince?.steps ?? []);
  const steps = (line: readonly Step[]) =>
    line.map((step, at) => (
      <div key={step.id} id={step.id}>
        {headingBefore(line, at) && <p className={css.head}>{headingBefore(line, at)}</p>}
        <ReaderStep
          step={step}
          band={bands?.of.get(step.id) ?? null}
          scale={bands?.scale ?? null}
          changed={changed.has(step.id)}
        />
      </div>
    ));
  return (
    <>
      <div className={css.body}>
        {changedSince && changed.size > 0 && (
          <Notice kind="caution" word="Changed since you last read:">
            {changed.size} {changed.size === 1 ? 'step' : 'steps'} since issue {changedSince.issueNumber}, marked at the
            right edge.
          </Notice>
        )}
        <TodayForm sheet={sheet} figures={figures} onToday={setToday} />
      </div>
      {steps(procedure.steps)}
      {procedure.branches.map((branch) => (
        <section key={branch.id} aria-label={branch.title}>
          <div className={css.body}>
            <h2>{branch.title}</h2>
            <span className={css.cue}>{cueText(branch.when)}</span>
            {branch.before.map((notice) => (
              <NoticeLine key={notice.text} kind={notice.kind} text={notice.text} />
            ))}
          </div>
          {steps(branch.steps)}
          {branch.joins && <p className={css.head}>Then on with {branch.joins}</p>}
        </section>
      ))}
      <div className={css.body}>
        <details>
          <summary>For which aircraft and conditions</summary>
          <ProcedureFacts procedure={procedure} />
          <p className="small">
            Signed by {issue.signedBy}. Content sha-256 {issue.sha256.slice(0, 16)} …
          </p>
        </details>
      </div>
      <p className={css.care}>
        Not for dispatch. V1, VR, V2, VREF and VAPP are the approved figures that you enter; bands come from sheet{' '}
        {issue.sheet?.revision ?? '–'}. The approved flight manual and the authority prevail.
      </p>
      <AcknowledgeBar issue={issue} tail={tail} />
    </>
  );
}

const isMemory = (step: Step | undefined) => step?.flags.includes('memory') ?? false;

function headingBefore(line: readonly Step[], at: number): string {
  if (isMemory(line[at]) && !isMemory(line[at - 1])) return 'From memory';
  return at > 0 && !isMemory(line[at]) && isMemory(line[at - 1]) ? 'Then' : '';
}
