import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { people } from '../../../../lib/server/people.ts';
import { ROLES } from '../../../../lib/server/roles.ts';
import { shown, signedIn } from '../../../_ui/arrive.ts';
import { LinkButton } from '../../../_ui/button.tsx';
import { Notice } from '../../../_ui/notice.tsx';
import { PageHead } from '../../../_ui/page-head.tsx';
import { Main } from '../../../_ui/shell.tsx';
import { PersonForms } from './person-forms.tsx';

export const metadata: Metadata = { title: 'A person' };

export default async function Page({ params }: { params: Promise<{ person: string }> }) {
  const { person } = await params;
  const viewer = await signedIn(`/people/${person}`);
  const line = shown(await people(viewer)).find((one) => one.personId === person) ?? notFound();
  const { active, name, title, signInName, openSessions } = line;
  return (
    <Main>
      <PageHead label={`signs in as ${signInName}`} title={title ? `${name}, ${title}` : name}>
        <LinkButton href="/people">All people</LinkButton>
      </PageHead>
      {active ? (
        <PersonForms
          personId={person}
          self={viewer.personId === person}
          roles={ROLES}
          held={line.roles.map(({ role }) => role)}
          openSessions={openSessions}
        />
      ) : (
        <Notice>
          {name} has left and cannot sign in. What they wrote, reviewed and signed stays in the record under this name.
        </Notice>
      )}
    </Main>
  );
}
