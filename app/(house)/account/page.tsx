import type { Metadata } from 'next';
import { welcome } from '../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { PageHead, Section } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { PasswordForm } from './password-form.tsx';

export const metadata: Metadata = { title: 'Account' };

export default async function Page() {
  const { name, operatorName } = shown(await welcome(await signedIn('/account')));
  return (
    <Main>
      <PageHead label={operatorName} title={name} />
      <Section title="Change your password">
        <PasswordForm />
      </Section>
    </Main>
  );
}
