'use client';
import { useEffect, useRef, useState } from 'react';
import type { Checked } from '../../../../lib/check/check.ts';
import type { Facts } from '../../../../lib/check/facts.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import type { CheckAnswer, CheckQuestion } from '../_draft/check-worker.ts';

export type Checking = {
  /** The last answer; null before the first. */
  readonly checked: Checked | null;
  /** True while the text has moved on since that answer: counts are then of a moment ago, and the screen says so. */
  readonly pending: boolean;
  readonly failed: string;
};

/** Asks the worker anew whenever the text changes. An answer to an older question is passed over. */
export function useChecks(procedure: Procedure, facts: Partial<Facts>): Checking {
  const [state, setState] = useState<Checking>({ checked: null, pending: true, failed: '' });
  const worker = useRef<Worker | null>(null);
  const asked = useRef(0);
  const told = useRef<Partial<Facts> | null>(null);
  useEffect(() => {
    const made = new Worker(new URL('../_draft/check-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    told.current = null;
    made.onmessage = ({ data }: MessageEvent<CheckAnswer>) => {
      if (data.id !== asked.current) return;
      if ('failed' in data) setState((before) => ({ ...before, pending: false, failed: data.failed }));
      else setState({ checked: data.checked, pending: false, failed: '' });
    };
    return () => made.terminate();
  }, []);
  useEffect(() => {
    asked.current += 1;
    const question: CheckQuestion = { id: asked.current, procedure, ...(told.current === facts ? {} : { facts }) };
    told.current = facts;
    setState((before) => (before.pending ? before : { ...before, pending: true }));
    worker.current?.postMessage(question);
  }, [procedure, facts]);
  return state;
}
