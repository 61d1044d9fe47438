import type { Metadata } from 'next';
import { people } from '../../../lib/server/people.ts';
import { ROLES } from '../../../lib/server/roles.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { LinkButton } from '../../_ui/button.tsx';
import { PageHead, Section } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { AddForm } from './add-form.tsx';
import { PeopleTable } from './people-table.tsx';

export const metadata: Metadata = { title: 'People' };

export default async function Page() {
  const lines = shown(await people(await signedIn('/people')));
  const here = lines.filter((line) => line.active);
  const left = lines.filter((line) => !line.active);
  return (
    <Main>
      <PageHead title="People">
        <LinkButton href="#add">Add a person</LinkButton>
      </PageHead>
      <p className="small">
        Whoever drafts, whoever reviews and whoever signs one issue must be three people, whatever roles they hold.
      </p>
      <PeopleTable lines={here} />
      {left.length > 0 && (
        <Section title="Have left">
          <PeopleTable lines={left} />
        </Section>
      )}
      <div id="add">
        <Section title="Add a person">
          <AddForm roles={ROLES} />
        </Section>
      </div>
    </Main>
  );
}
