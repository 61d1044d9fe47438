import type { Metadata } from 'next';
import { forbidden } from 'next/navigation';
import { desk } from '../../../lib/server/desk.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { LinkButton } from '../../_ui/button.tsx';
import { PageHead, Section } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { CandidateTable } from './candidate-table.tsx';
import { DraftTable } from './draft-table.tsx';

export const metadata: Metadata = { title: 'Desk' };

export default async function Page() {
  const { drafts, review, signing, decided, may } = shown(await desk(await signedIn('/desk')));
  if (!may.readDrafts && !may.sign) forbidden();
  return (
    <Main>
      <PageHead title="Desk">{may.write && <LinkButton href="/desk/new">New procedure</LinkButton>}</PageHead>
      {may.sign && (
        <Section title="Waiting for a signature">
          <CandidateTable lines={signing} to="sign" empty="Nothing waits for a signature." />
        </Section>
      )}
      <Section title="Under review">
        <CandidateTable lines={review} to="reviews" empty="Nothing is under review." />
      </Section>
      {may.readDrafts && (
        <Section title="Open drafts">
          <DraftTable lines={drafts} write={may.write} />
        </Section>
      )}
      {decided.length > 0 && (
        <Section title="Decided in the last 30 days">
          <CandidateTable lines={decided} to="reviews" empty="" />
        </Section>
      )}
    </Main>
  );
}
