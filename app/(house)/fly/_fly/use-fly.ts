'use client';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Checked } from '../../../../lib/check/check.ts';
import type { Figure } from '../../../../lib/flight/figures.ts';
import type { SweepResult } from '../../../../lib/flight/sweep.ts';
import { checker, type Flying, flyer, searcher } from './ask-fly.ts';
import type { Flown, Given, Ground } from './fly-one.ts';
import type { Near, Sweeping } from './fly-worker.ts';

export type FlownNow = { readonly of: Flying; readonly now: Flown; readonly was: Flown | null; readonly took: number };

/** The flight as set. `pending` while the newest one is still being flown; what was flown before stays until then. */
export function useFlight(ground: Ground, wanted: Flying) {
  const [flown, setFlown] = useState<FlownNow | null>(null);
  const [failed, setFailed] = useState('');
  const worker = useRef<ReturnType<typeof flyer> | null>(null);
  useEffect(() => {
    const made = flyer(ground, (answer, of) => {
      if (answer.kind === 'flown') {
        setFlown({ of, now: answer.now, was: answer.was, took: answer.took });
        setFailed('');
      } else if (answer.kind === 'failed') setFailed(answer.says);
    });
    worker.current = made;
    return () => made.end();
  }, [ground]);
  useEffect(() => worker.current?.fly(wanted), [wanted]);
  return { flown, failed, pending: flown?.of !== wanted && failed === '' };
}

/** ms without a change before what takes longer is asked. */
const REST = 350;

export type Sweep =
  | { readonly kind: 'none' }
  | { readonly kind: 'running'; readonly done: number; readonly of: number }
  | { readonly kind: 'done'; readonly result: SweepResult; readonly took: number; readonly asked: Sweeping }
  | { readonly kind: 'stopped' };

/** What is around the flight that is shown, and the sweep over all weights. */
export function useSearch(ground: Ground, wanted: Flying) {
  const [near, setNear] = useState<{ near: Near; of: Flying } | null>(null);
  const [sweep, setSweep] = useState<Sweep>({ kind: 'none' });
  const [failed, setFailed] = useState('');
  const worker = useRef<ReturnType<typeof searcher> | null>(null);
  const asked = useRef<{ near: Flying; sweep: Sweeping | null }>({ near: wanted, sweep: null });
  const again = useRef(new Map<number, (figures: readonly Figure[]) => void>());
  useEffect(() => {
    const made = searcher(ground, (answer) => {
      if (answer.kind === 'near') setNear({ near: answer.near, of: asked.current.near });
      else if (answer.kind === 'progress') setSweep({ kind: 'running', done: answer.done, of: answer.of });
      else if (answer.kind === 'stopped') setSweep({ kind: 'stopped' });
      else if (answer.kind === 'swept') {
        setSweep({ kind: 'done', result: answer.result, took: answer.took, asked: asked.current.sweep! });
      } else if (answer.kind === 'again') again.current.get(answer.id)?.(answer.figures);
      else if (answer.kind === 'failed') setFailed(answer.says);
    });
    worker.current = made;
    return () => made.end();
  }, [ground]);
  useEffect(() => {
    const timer = setTimeout(() => {
      asked.current.near = wanted;
      worker.current?.near(wanted.given, wanted.interruptions);
    }, REST);
    return () => clearTimeout(timer);
  }, [wanted]);
  const start = useCallback((question: Sweeping) => {
    asked.current.sweep = question;
    setSweep({ kind: 'running', done: 0, of: 0 });
    worker.current?.sweep(question);
  }, []);
  const stop = useCallback(() => worker.current?.stop(), []);
  const replay = useCallback((given: Given, hear: (figures: readonly Figure[]) => void) => {
    const id = worker.current?.again(given);
    if (id !== undefined) again.current.set(id, hear);
  }, []);
  return { near: near?.of === wanted ? near.near : null, sweep, start, stop, replay, failed };
}

/** The checks that need time, asked once of the text that is flown. */
export function useTimedChecks(ground: Ground) {
  const [checked, setChecked] = useState<Checked | null>(null);
  const [failed, setFailed] = useState('');
  useEffect(() => {
    const made = checker(ground, (answer) => {
      if (answer.kind === 'checked') setChecked(answer.checked);
      else if (answer.kind === 'failed') setFailed(answer.says);
    });
    return () => made.end();
  }, [ground]);
  return { checked, failed };
}
