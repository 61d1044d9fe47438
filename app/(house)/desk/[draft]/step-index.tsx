'use client';
import type { Finding } from '../../../../lib/check/finding.ts';
import { useBranch, useOrder, useStep } from '../_draft/use-draft.ts';
import { nameOfStep, useEditing } from './editing.ts';
import css from './editor.module.css';

/** Every step by its label, with what the checks found there. */
export function StepIndex({ findings }: { findings: readonly Finding[] }) {
  const order = useOrder();
  const worst = new Map<string, string>();
  for (const { at, severity } of findings) {
    if (severity === 'STOP' || (severity === 'ANSWER' && !worst.has(at.step))) worst.set(at.step, severity);
  }
  const part = (parent: string | null) =>
    order.steps.flatMap((one, at) =>
      one.parent === parent ? [<Entry key={one.id} id={one.id} at={at} severity={worst.get(one.id)} />] : [],
    );
  return (
    <nav className={`${css.index} no-print`} aria-label="Steps">
      <h2>Steps</h2>
      <ul>{part(null)}</ul>
      {order.branches.map((id) => (
        <div key={id}>
          <BranchName id={id} />
          <ul>{part(id)}</ul>
        </div>
      ))}
    </nav>
  );
}

function BranchName({ id }: { id: string }) {
  const branch = useBranch(id);
  return <h3>{branch?.label || branch?.title || 'Branch'}</h3>;
}

function Entry({ id, at, severity }: { id: string; at: number; severity: string | undefined }) {
  const step = useStep(id);
  const { current, open, labels } = useEditing();
  return (
    <li>
      <button
        type="button"
        className={current === id ? css.here : undefined}
        aria-current={current === id || undefined}
        onClick={() => open(id)}
      >
        {nameOfStep(labels[id] || step?.label || '', at)}
        {severity && (
          <span className={severity === 'STOP' ? css.stop : css.answer}>
            <span className="unseen">{severity}</span>
          </span>
        )}
      </button>
    </li>
  );
}
