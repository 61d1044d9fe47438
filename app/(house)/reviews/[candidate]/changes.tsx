import type { Change } from '../../../../lib/diff/change.ts';
import { describe, namesOf, textOfValue, wordOfField } from '../../../../lib/diff/describe.ts';
import { compareWords } from '../../../../lib/diff/words.ts';
import type { OpenCandidate } from '../../../../lib/server/reviews.ts';
import css from './review.module.css';

/** Changes by meaning, one row each; several of one step stand together. */
export function Changes({ open }: { open: Pick<OpenCandidate, 'changes' | 'base' | 'procedure' | 'labels'> }) {
  const { changes, base, procedure } = open;
  if (changes.length === 0) return <p className="small">Nothing differs.</p>;
  const known = namesOf(...(base ? [base.procedure] : []), procedure);
  const name = (id: string) => open.labels[id] || known(id);
  return changes.map((change) => {
    const { where, kind } = headOf(change, name);
    return (
      <div className={css.change} key={`${change.kind} ${where} ${kind}`}>
        <div className={css.what}>
          {where}
          <span>{kind}</span>
        </div>
        <div>
          <Said change={change} name={name} />
        </div>
      </div>
    );
  });
}

function headOf(change: Change, name: (id: string) => string): { where: string; kind: string } {
  switch (change.kind) {
    case 'added':
    case 'removed':
      return {
        where: change.step.label || name(change.step.id),
        kind: change.kind === 'added' ? 'new step' : 'step removed',
      };
    case 'moved':
      return { where: name(change.id), kind: 'moved' };
    case 'field':
      return { where: name(change.id), kind: wordOfField(change.field) };
    case 'branch-added':
    case 'branch-removed':
      return { where: change.branch.title, kind: change.kind === 'branch-added' ? 'new branch' : 'branch removed' };
    case 'branch-moved':
      return { where: name(change.id), kind: 'branch moved' };
    case 'branch-field':
      return { where: name(change.id), kind: wordOfField(change.field) };
    default:
      return { where: 'Procedure', kind: wordOfField(change.field) };
  }
}

function Said({ change, name }: { change: Change; name: (id: string) => string }) {
  if (!('field' in change)) return describe(change, name);
  const before = textOfValue(change.field, change.before);
  const after = textOfValue(change.field, change.after);
  return compareWords(before, after).map((piece, at) => {
    if (piece.kind === 'same') return piece.text;
    return piece.kind === 'cut' ? (
      <del key={at} className={css.was}>
        {piece.text}
      </del>
    ) : (
      <ins key={at} className={css.now}>
        {piece.text}
      </ins>
    );
  });
}
