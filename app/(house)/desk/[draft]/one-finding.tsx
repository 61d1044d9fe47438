'use client';
import { useState } from 'react';
import type { Finding } from '../../../../lib/check/finding.ts';
import { compareWords } from '../../../../lib/diff/words.ts';
import { setText } from '../../../../lib/document/edit.ts';
import { textOf } from '../../../../lib/document/model.ts';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { ActForm } from '../../../_ui/act-form.tsx';
import { Button } from '../../../_ui/button.tsx';
import { Field, LongField } from '../../../_ui/field.tsx';
import { FindingCard } from '../../../_ui/finding.tsx';
import { sayTime } from '../../../_ui/when.tsx';
import { useDraft, useStep } from '../_draft/use-draft.ts';
import { answer, waive } from './actions.ts';
import { nameOfStep, useEditing } from './editing.ts';
import css from './editor.module.css';

/** A finding with what can be done about it: go there, take the certain correction, answer it, waive it. */
export function OneFinding({
  finding,
  others,
  open,
  at,
}: {
  finding: Finding;
  others: readonly Finding[];
  open: OpenDraft;
  at: number;
}) {
  const { may, open: goTo, labels } = useEditing();
  const step = useStep(finding.at.step);
  const [form, setForm] = useState<'answer' | 'waive' | null>(null);
  const settled = open.settled.find((one) => one.check === finding.check && one.read === finding.read);
  const key = { draftId: open.draftId, check: finding.check, read: finding.read };
  const name = finding.at.step ? nameOfStep(labels[finding.at.step] || step?.label || '', at) : 'procedure';
  const done = () => ({ say: 'Recorded.' });
  return (
    <FindingCard
      finding={finding}
      others={others.length}
      expected={step?.expect}
      where={
        finding.at.step ? (
          <Button look="plain" onClick={() => goTo(finding.at.step, cellOf(finding.at.field))}>
            {name}
          </Button>
        ) : (
          name
        )
      }
      answered={
        settled
          ? `${settled.kind === 'waiver' ? 'Waived' : 'Answered'} by ${settled.byName}, ${sayTime(settled.settledAt)}: ${settled.reason}`
          : ''
      }
    >
      {others.length > 0 && (
        <div className={css.others}>
          {others.map((other) => (
            <OtherPlace key={other.read + other.at.step} finding={other} />
          ))}
        </div>
      )}
      {finding.fix && may.write && <FixIt finding={finding} />}
      {!settled && finding.severity === 'ANSWER' && may.answer && (
        <Button
          look="plain"
          onClick={() => setForm(form === 'answer' ? null : 'answer')}
          aria-expanded={form === 'answer'}
        >
          Answer it
        </Button>
      )}
      {!settled && finding.severity === 'STOP' && may.waive && (
        <Button
          look="plain"
          onClick={() => setForm(form === 'waive' ? null : 'waive')}
          aria-expanded={form === 'waive'}
        >
          Waive it
        </Button>
      )}
      {form === 'answer' && !settled && (
        <ActForm
          act={(words) => answer({ ...words, ...key } as Parameters<typeof answer>[0])}
          onDone={done}
          button="Record the answer"
        >
          <LongField
            label="Why it stands"
            name="reason"
            required
            hint="What makes it right here, and what guards it."
          />
        </ActForm>
      )}
      {form === 'waive' && !settled && (
        <ActForm
          act={(words) => waive({ ...words, ...key } as Parameters<typeof waive>[0])}
          onDone={done}
          button="Record the waiver"
          look="grave"
        >
          <LongField label="Why it may stand" name="reason" required hint="The signer sees this." />
          <Field label="Until" name="expiresOn" type="date" required />
        </ActForm>
      )}
    </FindingCard>
  );
}

/** The cell in which a field of a finding is typed. */
const cellOf = (field: string): string =>
  field === 'expect' ? 'expect.thrust' : field === 'order' ? 'orderWords' : field || 'cue';

function OtherPlace({ finding }: { finding: Finding }) {
  const { open, labels } = useEditing();
  const step = useStep(finding.at.step);
  return (
    <Button look="plain" onClick={() => open(finding.at.step, cellOf(finding.at.field))}>
      {labels[finding.at.step] || step?.label || 'new step'}
    </Button>
  );
}

/** The correction as the change it makes; taken over only when pressed, and undone like anything typed. */
function FixIt({ finding }: { finding: Finding }) {
  const { doc, hand } = useDraft();
  const { refuse } = useEditing();
  const fix = finding.fix!;
  const text = textOf(doc, { in: 'steps', id: fix.at.step }, fix.at.field);
  if (!text) return null;
  return (
    <div className={css.fix}>
      <span>
        {compareWords(text.toString(), fix.value).map((piece, place) =>
          piece.kind === 'same' ? (
            piece.text
          ) : piece.kind === 'cut' ? (
            <del key={place}>{piece.text}</del>
          ) : (
            <ins key={place}>{piece.text}</ins>
          ),
        )}
      </span>
      <Button
        look="plain"
        onClick={() => {
          setText(doc, hand, { in: 'steps', id: fix.at.step }, fix.at.field, 0, text.length, fix.value);
          refuse(`${fix.says}. Undo takes it back.`);
        }}
      >
        {fix.says}
      </Button>
    </div>
  );
}
