import type { Metadata } from 'next';
import { policies } from '../../../lib/server/policies.ts';
import { welcome } from '../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { LinkButton } from '../../_ui/button.tsx';
import { Empty } from '../../_ui/notice.tsx';
import { PageHead, Section } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { PolicyHistory } from './policy-history.tsx';
import { PolicyPage } from './policy-page.tsx';

export const metadata: Metadata = { title: 'Policy' };

export default async function Page() {
  const viewer = await signedIn('/policy');
  const { may } = shown(await welcome(viewer));
  const lines = shown(await policies(viewer));
  const now = lines[0];
  return (
    <Main>
      <PageHead label={now ? `version ${now.version}, ${now.policy.operator}` : undefined} title="Policy">
        {may.managePolicy && <LinkButton href="/policy/new">{now ? 'Change it' : 'Write the first one'}</LinkButton>}
      </PageHead>
      {now ? (
        <PolicyPage policy={now.policy} />
      ) : (
        <Empty title="No policy yet">
          Nothing can be checked or submitted before there is one. A standards captain or an administrator writes it.
        </Empty>
      )}
      {now && (
        <Section title="Every version">
          <PolicyHistory lines={lines} />
        </Section>
      )}
    </Main>
  );
}
