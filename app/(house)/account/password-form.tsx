'use client';
import { ActForm } from '../../_ui/act-form.tsx';
import { Field } from '../../_ui/field.tsx';
import { renew } from './actions.ts';

export function PasswordForm() {
  return (
    <ActForm
      act={(words) => renew(words as Parameters<typeof renew>[0])}
      onDone={() => ({ say: 'Your password is changed. Sessions on other devices are ended.' })}
      button="Change the password"
    >
      <Field label="Password now" name="old" type="password" required autoComplete="current-password" />
      <Field
        label="New password"
        name="new"
        type="password"
        required
        minLength={10}
        autoComplete="new-password"
        hint="At least 10 characters. It is asked again when you sign an issue."
      />
      <Field label="New password again" name="again" type="password" required autoComplete="new-password" />
    </ActForm>
  );
}
