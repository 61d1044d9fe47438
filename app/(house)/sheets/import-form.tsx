'use client';
import { FileActForm } from '../../_ui/file-act-form.tsx';
import { bringIn } from './actions.ts';

export function ImportForm() {
  return (
    <FileActForm
      act={bringIn}
      onDone={({ revisionId }) => ({ go: `/sheets/${revisionId}` })}
      label="Sheet file"
      button="Import this revision"
    />
  );
}
