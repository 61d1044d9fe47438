'use client';
import { FileActForm } from '../../_ui/file-act-form.tsx';
import { bringIn } from './actions.ts';

export function ImportForm() {
  return (
    <FileActForm
      act={bringIn}
      onDone={({ changed }) => ({
        say: changed === 0 ? 'Nothing in the file was new.' : `${changed} new or changed, each as a new version.`,
      })}
      label="Library file"
      button="Bring it in"
    />
  );
}
