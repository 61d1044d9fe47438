'use client';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { ReadIssue } from '../../../../lib/server/reading.ts';
import { type Refusal, RefusalNotice } from '../../../_ui/act-form.tsx';
import { Button } from '../../../_ui/button.tsx';
import { sayTime } from '../../../_ui/when.tsx';
import { iHaveRead } from '../../actions.ts';
import css from '../../read.module.css';

const NO_ANSWER: Refusal = {
  code: 'no-answer',
  sentence: 'The server did not answer, so your receipt is not recorded yet. Do it again with a network.',
  details: [],
};

/** The receipt of one issue by one person. */
export function AcknowledgeBar({ issue, tail }: { issue: ReadIssue; tail: string }) {
  const router = useRouter();
  const [at, setAt] = useState(issue.acknowledgedAt);
  const [busy, setBusy] = useState(false);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  if (!issue.may.acknowledge && !at) return null;
  const receipt = async () => {
    setBusy(true);
    setRefusal(null);
    const device = navigator.userAgent.slice(0, 200);
    const answer = await iHaveRead({
      registration: tail,
      procedureId: issue.procedureId,
      issueNumber: issue.issueNumber,
      device,
    }).catch(() => null);
    setBusy(false);
    if (!answer) setRefusal(NO_ANSWER);
    else if (!answer.ok) setRefusal(answer.error);
    else {
      setAt(answer.value.acknowledgedAt);
      router.refresh();
    }
  };
  return (
    <div className={`${css.foot} no-print`}>
      <div>
        {refusal && <RefusalNotice refusal={refusal} />}
        {at ? (
          <span role="status">
            You have read issue {issue.issueNumber}: {sayTime(at)}
          </span>
        ) : (
          <Button look="main" onClick={receipt} disabled={busy}>
            {busy ? 'One moment …' : 'I have read this'}
          </Button>
        )}
      </div>
    </div>
  );
}
