import type { Metadata } from 'next';
import { forbidden } from 'next/navigation';
import { defaultPolicy } from '../../../../lib/policy/policy.ts';
import { policies } from '../../../../lib/server/policies.ts';
import { welcome } from '../../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../../_ui/arrive.ts';
import { PageHead } from '../../../_ui/page-head.tsx';
import { Main } from '../../../_ui/shell.tsx';
import { PolicyForm } from '../policy-form.tsx';

export const metadata: Metadata = { title: 'New version of the policy' };

export default async function Page() {
  const viewer = await signedIn('/policy/new');
  const { may, operatorName } = shown(await welcome(viewer));
  if (!may.managePolicy) forbidden();
  const last = shown(await policies(viewer))[0];
  const start = last?.policy ?? { ...defaultPolicy, operator: operatorName };
  const next = (last?.version ?? 0) + 1;
  return (
    <Main>
      <PageHead
        label={last ? `from version ${last.version}` : 'from the figures of a new operator'}
        title={`Policy, version ${next}`}
      />
      <PolicyForm start={{ ...start, version: String(next) }} before={last?.policy ?? null} />
    </Main>
  );
}
