'use client';
import { signIn } from 'next-auth/react';
import { useState } from 'react';
import { Button } from '../_ui/button.tsx';
import { Field, formClass } from '../_ui/field.tsx';
import { Notice } from '../_ui/notice.tsx';

/** Only a path of this site: a link in a mail must not send a signed-in person elsewhere. */
const inside = (to: string | undefined) => (to?.startsWith('/') && !to.startsWith('//') ? to : '/');

export function SignInForm({ next }: { next?: string }) {
  const [refused, setRefused] = useState('');
  const [busy, setBusy] = useState(false);
  return (
    <form
      method="post"
      className={formClass}
      onSubmit={async (event) => {
        event.preventDefault();
        setBusy(true);
        setRefused('');
        const form = new FormData(event.currentTarget);
        const said = await signIn('credentials', {
          redirect: false,
          name: String(form.get('name')),
          password: String(form.get('password')),
        }).catch(() => undefined);
        if (said?.ok && !said.error) {
          location.assign(inside(next));
          return;
        }
        setBusy(false);
        setRefused(
          said
            ? 'That name and password do not go together, or there were too many tries. Nothing else happened. Check both; after five tries wait a quarter of an hour.'
            : 'The server did not answer. Nothing was sent twice. Try again in a moment.',
        );
      }}
    >
      <Field label="Sign-in name" name="name" autoComplete="username" autoCapitalize="none" required />
      <Field label="Password" name="password" type="password" autoComplete="current-password" required />
      {refused && (
        <Notice kind="stop" live>
          {refused}
        </Notice>
      )}
      <div>
        <Button type="submit" look="main" disabled={busy}>
          {busy ? 'One moment …' : 'Sign in'}
        </Button>
      </div>
    </form>
  );
}
