'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { ModeSet } from '../../../../lib/aircraft/mode-set.ts';
import type { TableAnswer } from './table-answer.ts';
import type { TableReply } from './table-worker.ts';

export type Checking = {
  readonly answer: TableAnswer | null;
  /** The table that was answered for. */
  readonly of: ModeSet | null;
  readonly failed: string;
};

/** Asks the worker for the newest table that can be read. One question is under way at a time. null: nothing to ask. */
export function useTableCheck(modes: ModeSet | null): Checking {
  const [state, setState] = useState<Checking>({ answer: null, of: null, failed: '' });
  const worker = useRef<Worker | null>(null);
  const wanted = useRef<ModeSet | null>(null);
  const told = useRef<ModeSet | null>(null);
  const busy = useRef(false);
  const ask = useCallback(() => {
    const want = wanted.current;
    if (!worker.current || !want || busy.current || want === told.current) return;
    told.current = want;
    busy.current = true;
    worker.current.postMessage({ modes: want });
  }, []);
  useEffect(() => {
    const made = new Worker(new URL('./table-worker.ts', import.meta.url), { type: 'module' });
    worker.current = made;
    told.current = null;
    busy.current = false;
    const take = (reply: TableReply) => {
      busy.current = false;
      const of = told.current;
      if ('failed' in reply) setState((before) => ({ ...before, of, failed: reply.failed }));
      else setState({ answer: reply.answer, of, failed: '' });
      ask();
    };
    made.onmessage = ({ data }: MessageEvent<TableReply>) => take(data);
    made.onerror = () => take({ failed: 'the explorer could not be started' });
    ask();
    return () => made.terminate();
  }, [ask]);
  useEffect(() => {
    wanted.current = modes;
    ask();
  }, [ask, modes]);
  return state;
}
