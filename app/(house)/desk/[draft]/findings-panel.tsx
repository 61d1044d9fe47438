'use client';
import Link from 'next/link';
import { useState } from 'react';
import type { Finding, Severity } from '../../../../lib/check/finding.ts';
import { SEVERITIES } from '../../../../lib/check/finding.ts';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { findingListClass } from '../../../_ui/finding.tsx';
import { useOrder } from '../_draft/use-draft.ts';
import { useEditing } from './editing.ts';
import css from './editor.module.css';
import { OneFinding } from './one-finding.tsx';
import type { Checking } from './use-checks.ts';

/** What waits, in words: never a count of a text that has moved on. */
export function headline(open: readonly Finding[], pending: boolean, first: boolean): string {
  if (first) return 'Checking …';
  const fix = open.filter((finding) => finding.severity === 'STOP').length;
  const answer = open.filter((finding) => finding.severity === 'ANSWER').length;
  const said =
    [fix > 0 ? `${fix} to fix` : '', answer > 0 ? `${answer} to answer` : ''].filter(Boolean).join(', ') ||
    'Nothing found';
  return pending ? `${said}, checking again …` : said;
}

/** Findings that neither an answer nor a waiver settles. */
export function unsettled(findings: readonly Finding[], open: OpenDraft): readonly Finding[] {
  return findings.filter(
    (finding) => !open.settled.some((one) => one.check === finding.check && one.read === finding.read),
  );
}

export function FindingsPanel({ open, checking }: { open: OpenDraft; checking: Checking }) {
  const { current } = useEditing();
  const [severity, setSeverity] = useState<Severity | 'all'>('all');
  const [here, setHere] = useState(false);
  const order = useOrder();
  const { checked, pending, failed } = checking;
  const findings = checked?.findings ?? [];
  const shown = findings.filter(
    (finding) => (severity === 'all' || finding.severity === severity) && (!here || finding.at.step === current),
  );
  const groups = [...Map.groupBy(shown, (finding) => `${finding.severity} ${finding.cause}`).values()];
  const place = (id: string) => order.steps.findIndex((one) => one.id === id);
  return (
    <>
      <h2>
        <span role="status">{headline(unsettled(findings, open), pending, checked === null)}</span>
      </h2>
      {failed && (
        <p className={css.unsaved}>
          The checks broke: {failed}. What is shown is from before; submitting is not possible until they run.
        </p>
      )}
      {checked && (
        <details className={css.scope}>
          <summary>
            Checked for {checked.checked.rules.length} properties, {checked.checked.envelope}
          </summary>
          <p>
            {checked.checked.rules.map((id, at) => (
              <span key={id}>
                {at > 0 && ', '}
                <Link href={`/checks/${id}`} target="_blank">
                  {id.replaceAll('-', ' ')}
                </Link>
              </span>
            ))}
          </p>
          <p>The checks that need a flight and two pilots are not among them: they are asked under “Fly it”.</p>
          {checked.checked.library && (
            <p>
              Against the operator’s library and {open.others?.length ?? 0} other procedures as they stood when this
              page was opened, state {checked.checked.library}.
            </p>
          )}
        </details>
      )}
      <div className={css.filter}>
        <select
          aria-label="Severity"
          value={severity}
          onChange={(event) => setSeverity(event.target.value as Severity | 'all')}
        >
          <option value="all">all severities</option>
          {SEVERITIES.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
        <label>
          <input type="checkbox" checked={here} onChange={(event) => setHere(event.target.checked)} /> this step only
        </label>
      </div>
      {checked && shown.length === 0 && (
        <p className="small">
          {findings.length === 0 ? 'Nothing was found by these checks over this envelope.' : 'Nothing for this choice.'}
        </p>
      )}
      <ul className={findingListClass}>
        {groups.map((group) => (
          <li key={group[0]!.check + group[0]!.read}>
            <OneFinding finding={group[0]!} others={group.slice(1)} open={open} at={place(group[0]!.at.step)} />
          </li>
        ))}
      </ul>
      {checked?.crashed.map((crash) => (
        <p key={crash.check} className={css.unsaved}>
          The check {crash.check.replaceAll('-', ' ')} failed to run: {crash.error}. It blocks submission.
        </p>
      ))}
      {checked && checked.notChecked.length > 0 && (
        <details className={css.scope}>
          <summary>Not checked: {checked.notChecked.length}</summary>
          {checked.notChecked.map((one, at) => (
            <p key={at}>
              {one.check.replaceAll('-', ' ')}, because {one.because}
            </p>
          ))}
        </details>
      )}
    </>
  );
}
