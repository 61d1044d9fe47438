import { allSteps } from '../../../../lib/procedure/procedure.ts';
import type { OpenCandidate } from '../../../../lib/server/reviews.ts';
import css from './review.module.css';

/** What a recommendation or a signature holds for, and nothing else. */
export function Frozen({ open, title }: { open: OpenCandidate; title: string }) {
  const branches = open.procedure.branches.length;
  return (
    <div className={css.box}>
      <h2>{title}</h2>
      <p className={css.hash}>sha-256 {open.sha256}</p>
      <p>
        {allSteps(open.procedure).length} steps
        {branches > 0 && `, ${branches} ${branches === 1 ? 'branch' : 'branches'} among them`} · sheet{' '}
        {open.sheet?.revision ?? 'none'} · policy {open.policyVersion} · {open.checkSet}
      </p>
    </div>
  );
}
