'use client';
import { Button } from '../../../_ui/button.tsx';
import { useDraft, useSaved } from '../_draft/use-draft.ts';
import css from './editor.module.css';

const time = (iso: string) => `${iso.slice(11, 16)}Z`;
const edits = (n: number) => (n === 1 ? '1 edit' : `${n} edits`);

/** "Saved" appears only when the database has committed. */
export function SaveLine() {
  const { tryAgain } = useDraft();
  const state = useSaved();
  switch (state.kind) {
    case 'opening':
      return <span className={css.saving}>Opening …</span>;
    case 'saving':
      return <span className={css.saving}>Saving …</span>;
    case 'saved':
      return <span className={css.saved}>{state.at ? `Saved ${time(state.at)}` : 'Saved'}</span>;
    case 'offline':
      return (
        <span className={css.unsaved}>
          Offline.{' '}
          {state.kept > 0
            ? `${edits(state.kept)} kept in this ${state.roomy ? 'browser' : 'tab: do not close it'}`
            : 'Nothing is waiting to be sent'}
        </span>
      );
    case 'read-only':
      return <span className={css.saving}>Read only</span>;
    default:
      return (
        <span className={css.unsaved} role="alert">
          {state.sentence}
          {state.kept > 0 && ` ${edits(state.kept)} kept here.`}
          {state.kind !== 'frozen' && (
            <Button look="plain" onClick={tryAgain}>
              Try again
            </Button>
          )}
        </span>
      );
  }
}
