'use client';
import type { ReactNode } from 'react';
import { setField } from '../../../../lib/document/edit.ts';
import type { Holder } from '../../../../lib/document/model.ts';
import { FLAGS, ROLES, type Step } from '../../../../lib/procedure/procedure.ts';
import { useDraft } from '../_draft/use-draft.ts';
import { ChoiceCell, TextCell } from './cells.tsx';
import { useEditing } from './editing.ts';
import { NoticeFields } from './notice-fields.tsx';
import css from './step-fields.module.css';

/** Verification, notices, notes and flags of the step at hand. */
export function MoreFields({ step, holder }: { step: Step; holder: Holder }) {
  return (
    <span className={css.more}>
      <Named name="Verified by">
        <ChoiceCell
          holder={holder}
          field="checkBy"
          label="Who verifies"
          value={step.checkBy}
          of={[...ROLES, 'the other pilot']}
          none="nobody"
        />
      </Named>
      <Named name="sees">
        <TextCell holder={holder} field="checkSees" label="What proves it" hint="the indication that proves it" />
      </Named>
      <Named name="within">
        <TextCell holder={holder} field="checkWithin" label="Time allowed" hint="time allowed, e.g. 4 s" />
      </Named>
      <Named name="if not">
        <TextCell holder={holder} field="checkIfNot" label="If not" hint="what is done then" />
      </Named>
      <Named name="Notices">
        <NoticeFields notices={step.before} holder={holder} />
      </Named>
      <Named name="Note">
        <TextCell holder={holder} field="note" label="Note" hint="useful to know, no action in it" />
      </Named>
      <Named name="Why">
        <TextCell holder={holder} field="why" label="Why" hint="why the step stands here" />
      </Named>
      <Named name="Source">
        <TextCell holder={holder} field="source" label="Source" hint="document, revision, section" />
      </Named>
      <Named name="Flags">
        <FlagBoxes step={step} holder={holder} />
      </Named>
    </span>
  );
}

function Named({ name, children }: { name: string; children: ReactNode }) {
  return (
    <span className={css.named}>
      <span>{name}</span>
      <span>{children}</span>
    </span>
  );
}

function FlagBoxes({ step, holder }: { step: Step; holder: Holder }) {
  const { doc, hand } = useDraft();
  const { may } = useEditing();
  return (
    <span className={css.flags}>
      {FLAGS.map((flag) => (
        <label key={flag}>
          <input
            type="checkbox"
            checked={step.flags.includes(flag)}
            disabled={!may.write}
            onChange={(event) => {
              const rest = step.flags.filter((one) => one !== flag);
              setField(doc, hand, holder, 'flags', event.target.checked ? [...rest, flag] : rest);
            }}
          />
          {flag}
        </label>
      ))}
    </span>
  );
}
