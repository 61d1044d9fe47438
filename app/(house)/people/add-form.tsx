'use client';
import { ActForm } from '../../_ui/act-form.tsx';
import { Field } from '../../_ui/field.tsx';
import { add } from './actions.ts';
import { RoleBoxes } from './role-boxes.tsx';

export function AddForm({ roles }: { roles: readonly string[] }) {
  return (
    <ActForm
      act={(words) => add(words as Parameters<typeof add>[0])}
      onDone={() => ({ say: 'Added. Hand the first password over in person; it can be changed under Account.' })}
      button="Add this person"
    >
      <Field label="Name" name="name" required autoComplete="off" />
      <Field label="Title" name="title" hint="As it stands beside a signature." autoComplete="off" />
      <Field label="Signs in as" name="signInName" required autoComplete="off" spellCheck={false} />
      <Field
        label="First password"
        name="password"
        type="password"
        required
        minLength={10}
        autoComplete="new-password"
        hint="At least 10 characters."
      />
      <RoleBoxes roles={roles} held={[]} />
    </ActForm>
  );
}
