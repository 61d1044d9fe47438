import type { Metadata } from 'next';
import { KINDS, library } from '../../../lib/server/library.ts';
import { welcome } from '../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { PageHead, Section } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { Entries } from './entries.tsx';
import { ImportForm } from './import-form.tsx';
import { fits } from './search.ts';
import { SearchForm } from './search-form.tsx';

export const metadata: Metadata = { title: 'Library' };

export default async function Page({ searchParams }: { searchParams: Promise<{ words?: string; kind?: string }> }) {
  const { words = '', kind = '' } = await searchParams;
  const viewer = await signedIn('/library');
  const { may } = shown(await welcome(viewer));
  const wanted = KINDS.filter((one) => kind === '' || one === kind);
  const lines = shown(await library(viewer)).filter((line) => wanted.includes(line.kind));
  const found = lines.filter((line) => fits([line.key, line.content], words));
  return (
    <Main>
      <PageHead title="Library" />
      <SearchForm kinds={KINDS} kind={kind} words={words} />
      {words && <p role="status">{found.length === 0 ? `Nothing has “${words}”.` : `${found.length} found.`}</p>}
      {wanted.map((one) => (
        <Entries key={one} kind={one} lines={found.filter((line) => line.kind === one)} searched={words !== ''} />
      ))}
      {may.manageLibrary && (
        <Section title="Bring in a file">
          <p className="small">
            Aerodromes, callouts, terms, checklists and sources in the documented format. Entries that differ get a new
            version; the rest stay as they are.
          </p>
          <ImportForm />
        </Section>
      )}
    </Main>
  );
}
