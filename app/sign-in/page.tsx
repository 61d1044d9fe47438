import type { Metadata } from 'next';
import { Care } from '../_ui/care.tsx';
import css from './sign-in.module.css';
import { SignInForm } from './sign-in-form.tsx';

export const metadata: Metadata = { title: 'Sign in' };

export default async function Page({ searchParams }: { searchParams: Promise<{ next?: string; why?: string }> }) {
  const { next, why } = await searchParams;
  return (
    <>
      <main className={css.page}>
        <p className={css.mark}>
          cue<b>wright</b>
        </p>
        <h1>Sign in</h1>
        {why === 'expired' && (
          <p>Your session has ended. What you wrote is kept in this browser and will be sent when you are back.</p>
        )}
        <SignInForm next={next} />
        <p className="small">Names and roles are given by your operator’s administrator.</p>
      </main>
      <Care />
    </>
  );
}
