'use client';
import { ActForm } from '../../../_ui/act-form.tsx';
import { Field, LongField } from '../../../_ui/field.tsx';
import { sayTime } from '../../../_ui/when.tsx';
import css from '../../reviews/[candidate]/review.module.css';
import { refuse, sign } from '../../reviews/actions.ts';

export function SignForms(props: { candidateId: string; sha256: string; statement: string; issue: number }) {
  const { candidateId, sha256, statement, issue } = props;
  return (
    <>
      <section className={css.box} aria-label="Sign">
        <h2>Sign</h2>
        <p>{statement}</p>
        <ActForm
          act={(words) => sign({ ...words, candidateId, sha256 } as Parameters<typeof sign>[0])}
          onDone={({ issueNumber, inForceFrom }) => ({
            say: `Signed as issue ${issueNumber}, in force from ${sayTime(inForceFrom)}.`,
          })}
          button={`Sign issue ${issue}`}
        >
          <Field label="In force from, UTC" name="effectiveFrom" type="datetime-local" hint="Left empty: at once." />
          <Field
            label="Your password, again"
            name="password"
            type="password"
            autoComplete="current-password"
            required
          />
        </ActForm>
      </section>
      <section className={css.box} aria-label="Refuse">
        <h2>Refuse</h2>
        <ActForm
          act={(words) => refuse({ ...words, candidateId } as Parameters<typeof refuse>[0])}
          onDone={() => ({ say: 'Refused. The drafter sees your reason.' })}
          button="Refuse"
          look="grave"
        >
          <LongField label="Why it must not be signed" name="reason" required />
        </ActForm>
      </section>
    </>
  );
}
