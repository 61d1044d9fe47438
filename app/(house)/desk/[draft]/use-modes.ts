'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { ModeSet } from '../../../../lib/aircraft/mode-set.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import type { ModeAnswer } from '../_draft/mode-answer.ts';
import type { ModeQuestion, ModeReply } from '../_draft/mode-worker.ts';

export type Exploring = {
  readonly answer: ModeAnswer | null;
  /** True while the text or the step has moved on since that answer. */
  readonly pending: boolean;
  readonly failed: string;
};
type Wanted = { readonly procedure: Procedure; readonly modes: ModeSet; readonly step: string };

/** Asks the explorer for one step. One question is under way at a time; of those that wait, only the newest is asked. */
export function useModes(procedure: Procedure, modes: ModeSet, step: string): Exploring {
  const [state, setState] = useState<Exploring>({ answer: null, pending: true, failed: '' });
  const worker = useRef<Worker | null>(null);
  const wanted = useRef<Wanted | null>(null);
  const told = useRef<Wanted | null>(null);
  const busy = useRef(false);
  const ask = useCallback(() => {
    const want = wanted.current;
    if (!worker.current || !want || busy.current || want === told.current) return;
    const question: ModeQuestion = {
      step: want.step,
      ...(told.current?.procedure === want.procedure ? {} : { procedure: want.procedure }),
      ...(told.current?.modes === want.modes ? {} : { modes: want.modes }),
    };
    told.current = want;
    busy.current = true;
    worker.current.postMessage(question);
  }, []);
  useEffect(() => {
    const made = new Worker(new URL('../_draft/mode-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    told.current = null;
    busy.current = false;
    const take = (reply: ModeReply) => {
      busy.current = false;
      const pending = wanted.current !== told.current;
      if ('failed' in reply) setState({ answer: null, pending, failed: reply.failed });
      else setState({ answer: reply.answer, pending, failed: '' });
      ask();
    };
    made.onmessage = ({ data }: MessageEvent<ModeReply>) => take(data);
    made.onerror = () => take({ failed: 'the explorer could not be started' });
    return () => made.terminate();
  }, [ask]);
  useEffect(() => {
    wanted.current = { procedure, modes, step };
    setState((before) => (before.pending ? before : { ...before, pending: true }));
    ask();
  }, [ask, procedure, modes, step]);
  return state;
}
