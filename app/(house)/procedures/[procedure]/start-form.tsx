'use client';
import { ActForm } from '../../../_ui/act-form.tsx';
import { start } from '../../desk/actions.ts';
import { ChangeFields } from '../../desk/change-fields.tsx';

export function StartForm({ procedureId }: { procedureId: string }) {
  return (
    <div id="change">
      <ActForm
        act={(words) => start({ ...words, procedureId } as Parameters<typeof start>[0])}
        onDone={({ draftId }) => ({ go: `/desk/${draftId}` })}
        button="Start a draft"
      >
        <ChangeFields />
      </ActForm>
    </div>
  );
}
