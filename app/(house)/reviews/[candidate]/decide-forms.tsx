'use client';
import { ActForm } from '../../../_ui/act-form.tsx';
import { LongField } from '../../../_ui/field.tsx';
import { back, commend, withdraw } from '../actions.ts';
import css from './review.module.css';

type Props = { candidateId: string };

export function ReviewForms({ candidateId }: Props) {
  return (
    <>
      <section className={css.box} aria-label="Recommend">
        <h2>Recommend</h2>
        <ActForm
          act={(words) => commend({ ...words, candidateId } as Parameters<typeof commend>[0])}
          onDone={() => ({ say: 'Recommended. An approver can sign it now.' })}
          button="Recommend"
        >
          <LongField
            label="What you state"
            name="statement"
            required
            defaultValue="I have read every change, its reason and every finding."
          />
          <LongField label="Why it may go on" name="reason" required />
          <LongField label="The risk in one sentence" name="riskNote" hint="Of changing, and of not changing." />
        </ActForm>
      </section>
      <section className={css.box} aria-label="Send back">
        <h2>Send back</h2>
        <ActForm
          act={(words) => back({ ...words, candidateId } as Parameters<typeof back>[0])}
          onDone={() => ({ say: 'Sent back. The drafter sees your reason.' })}
          button="Send back"
          look="quiet"
        >
          <LongField label="What must change, and why" name="reason" required />
        </ActForm>
      </section>
    </>
  );
}

export function WithdrawForm({ candidateId }: Props) {
  return (
    <section className={css.box} aria-label="Take it back">
      <h2>Take it back</h2>
      <ActForm
        act={(words) => withdraw({ ...words, candidateId } as Parameters<typeof withdraw>[0])}
        onDone={() => ({ say: 'Taken back. The text is in your draft.' })}
        button="Take it back"
        look="quiet"
      >
        <LongField label="Why" name="reason" required />
      </ActForm>
    </section>
  );
}
