'use client';
import { useEffect, useMemo, useState } from 'react';
import type { Checked } from '../../../../lib/check/check.ts';
import type { Facts } from '../../../../lib/check/facts.ts';
import { joinChecked } from '../../../../lib/check/order.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import { askChecks } from '../_draft/ask-checks.ts';
import type { Pace } from '../_draft/check-worker.ts';

export type Checking = {
  /** The last answer of both parts, or of the quick one while the other was never given; null before the first. */
  readonly checked: Checked | null;
  /** True while the text has moved on since that answer: counts are then of a moment ago, and the screen says so. */
  readonly pending: boolean;
  readonly failed: string;
};

type Part = { readonly checked: Checked | null; readonly of: Procedure | null; readonly failed: string };
const NOTHING: Part = { checked: null, of: null, failed: '' };

/** Asks both workers anew when the text changes, the slower one when the typing rests. */
export function useChecks(procedure: Procedure, facts: Partial<Facts>): Checking {
  const quick = usePart('atOnce', procedure, facts);
  const slow = usePart('atRest', procedure, facts);
  return useMemo(() => {
    const { checked } = quick;
    return {
      checked: checked && slow.checked ? joinChecked(procedure, checked, slow.checked) : checked,
      pending: quick.of !== procedure || slow.of !== procedure,
      failed: quick.failed || slow.failed,
    };
  }, [procedure, quick, slow]);
}

function usePart(pace: Pace, procedure: Procedure, facts: Partial<Facts>): Part {
  const [part, setPart] = useState(NOTHING);
  const [asking, setAsking] = useState<ReturnType<typeof askChecks> | null>(null);
  useEffect(() => {
    const made = askChecks(pace, (of, answer) =>
      setPart((before) => ({
        of,
        checked: 'failed' in answer ? before.checked : answer.checked,
        failed: 'failed' in answer ? answer.failed : '',
      })),
    );
    setAsking(made);
    return () => made.end();
  }, [pace]);
  useEffect(() => asking?.ask(procedure, facts), [asking, procedure, facts]);
  return part;
}
