'use client';
import type { Holder } from '../../../../lib/document/model.ts';
import { Button } from '../../../_ui/button.tsx';
import { useBranch } from '../_draft/use-draft.ts';
import { TextCell } from './cells.tsx';
import { useEditing } from './editing.ts';
import css from './editor.module.css';
import { GateCell } from './gate-cell.tsx';
import { NoticeFields } from './notice-fields.tsx';

/** Where a branch leaves, what it is called, where it joins again. */
export function BranchHead({ id, onRemove }: { id: string; onRemove: () => void }) {
  const branch = useBranch(id);
  const { may } = useEditing();
  if (!branch) return null;
  const holder: Holder = { in: 'branches', id };
  return (
    <header className={css.branch}>
      <span className="label">Branch {branch.label}</span>
      <TextCell holder={holder} field="title" label="Name of the branch" hint="what the branch is for" />
      <div className={css.pair}>
        <span>leaves when</span>
        <GateCell holder={holder} field="when" label="Condition of the branch" text={branch.when} />
      </div>
      <div className={css.pair}>
        <span>joins at</span>
        <TextCell
          holder={holder}
          field="joins"
          label="Where it joins again"
          hint="label of a step, or what comes then"
        />
      </div>
      <NoticeFields notices={branch.before} holder={holder} />
      {may.write && (
        <div>
          <Button look="plain" onClick={onRemove}>
            Remove this branch
          </Button>
        </div>
      )}
    </header>
  );
}
