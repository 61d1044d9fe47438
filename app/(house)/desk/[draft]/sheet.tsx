'use client';
import { useEffect, useRef } from 'react';
import type { Finding } from '../../../../lib/check/finding.ts';
import { addBranch, insertRows, remove } from '../../../../lib/document/edit.ts';
import { Button } from '../../../_ui/button.tsx';
import { Empty } from '../../../_ui/notice.tsx';
import type { Rail } from '../../../_ui/rail-rows.ts';
import script from '../../../_ui/script.module.css';
import { Columns } from '../../../_ui/script.tsx';
import { listenForChoice } from '../_draft/choose-steps.ts';
import { useDraft, useOrder } from '../_draft/use-draft.ts';
import { BranchHead } from './branch-head.tsx';
import { useEditing } from './editing.ts';
import css from './editor.module.css';
import { StepRow } from './step-row.tsx';
import { keepCaret, useRowKeys } from './use-row-keys.ts';

/** The rows of the procedure, main line first, then each branch under its head. */
export function Sheet({
  rail,
  findings,
  onSaid,
}: {
  rail: Rail | null;
  findings: readonly Finding[];
  onSaid: (said: string) => void;
}) {
  const { doc, hand, choice } = useDraft();
  const { current, may, open } = useEditing();
  const order = useOrder();
  const list = useRef<HTMLDivElement>(null);
  useRowKeys(list);
  useEffect(() => {
    if (!list.current || !may.write) return;
    return listenForChoice(list.current, choice, {
      refused: onSaid,
      removed: (ids) => onSaid(`${ids.length} removed. Undo brings ${ids.length === 1 ? 'it' : 'them'} back.`),
      pasted: (ids) => onSaid(`${ids.length} pasted.`),
      moved: (id) => keepCaret(list.current, id),
    });
  }, [choice, may.write, onSaid]);
  const lineOf = (parent: string | null) => order.steps.filter((one) => one.parent === parent);
  const add = (parent: string | null) => {
    const last = lineOf(parent).at(-1)?.id ?? null;
    open(insertRows(doc, hand, 'steps', [{}], { parent, after: last })[0]!, 'cue');
  };
  const rows = (parent: string | null) => {
    const line = lineOf(parent);
    const of = (at: number) => (line[at] ? (rail?.rows.get(line[at].id) ?? null) : null);
    return line.map(({ id }, at) => {
      const row = of(at);
      return (
        <StepRow
          key={id}
          id={id}
          at={order.steps.findIndex((one) => one.id === id)}
          isCurrent={current === id}
          rail={
            row && rail ? { row, before: of(at - 1), after: of(at + 1), scale: rail.scale, weight: rail.weight } : null
          }
          findings={findings.filter((finding) => finding.at.step === id)}
        />
      );
    });
  };
  return (
    <div ref={list} className={`${script.script} ${css.rows}`}>
      <Columns rail={rail !== null} />
      {order.steps.length === 0 && (
        <Empty title="No step yet">
          <p>A step says when, who, what, and which words. Start with the cue.</p>
        </Empty>
      )}
      {rows(null)}
      {may.write && <Button onClick={() => add(null)}>Add a step</Button>}
      {order.branches.map((id) => (
        <section key={id} className={script.branch}>
          <BranchHead
            id={id}
            onRemove={() => {
              remove(doc, hand, 'branches', [id]);
              onSaid('Branch removed with its steps. Undo brings it back.');
            }}
          />
          {rows(id)}
          {may.write && <Button onClick={() => add(id)}>Add a step to this branch</Button>}
        </section>
      ))}
      {may.write && (
        <div className={css.after}>
          <Button look="plain" onClick={() => addBranch(doc, hand)}>
            Add a branch
          </Button>
        </div>
      )}
    </div>
  );
}
