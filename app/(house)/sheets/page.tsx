import type { Metadata } from 'next';
import { sheetRevisions } from '../../../lib/server/aircraft.ts';
import { welcome } from '../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { Empty } from '../../_ui/notice.tsx';
import { PageHead, Section } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { ImportForm } from './import-form.tsx';
import { RevisionTable } from './revision-table.tsx';

export const metadata: Metadata = { title: 'Type data sheets' };

export default async function Page() {
  const viewer = await signedIn('/sheets');
  const { may } = shown(await welcome(viewer));
  const lines = shown(await sheetRevisions(viewer));
  return (
    <Main>
      <PageHead title="Type data sheets" />
      {lines.length === 0 ? (
        <Empty title="No sheet yet">
          <p>Speeds, limits and modes come from a sheet. Without one no procedure can be checked.</p>
        </Empty>
      ) : (
        <RevisionTable lines={lines} />
      )}
      {may.importSheet && (
        <Section title="Import a revision">
          <p className="small">
            YAML or JSON in the documented format. A revision that is here is never written over; what cannot be read is
            listed with its place.
          </p>
          <ImportForm />
        </Section>
      )}
    </Main>
  );
}
