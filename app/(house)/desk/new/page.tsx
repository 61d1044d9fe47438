import type { Metadata } from 'next';
import { forbidden } from 'next/navigation';
import { desk } from '../../../../lib/server/desk.ts';
import { shown, signedIn } from '../../../_ui/arrive.ts';
import { PageHead, Section } from '../../../_ui/page-head.tsx';
import { Main } from '../../../_ui/shell.tsx';
import { FileForm, NewForm } from './new-forms.tsx';

export const metadata: Metadata = { title: 'New procedure' };

export default async function Page() {
  if (!shown(await desk(await signedIn('/desk/new'))).may.write) forbidden();
  return (
    <Main>
      <PageHead title="New procedure" />
      <NewForm />
      <Section title="Or from a file">
        <p className="small">
          YAML or JSON in the documented format, permanent step ids included. Lines that can’t be read are listed.
        </p>
        <FileForm />
      </Section>
    </Main>
  );
}
