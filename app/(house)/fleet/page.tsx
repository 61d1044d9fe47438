import type { Metadata } from 'next';
import { fleets } from '../../../lib/server/aircraft.ts';
import { tails } from '../../../lib/server/reading.ts';
import { welcome } from '../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { Empty } from '../../_ui/notice.tsx';
import { PageHead, Section } from '../../_ui/page-head.tsx';
import { Main } from '../../_ui/shell.tsx';
import { FleetForm } from './fleet-forms.tsx';
import { FleetSection } from './fleet-section.tsx';
import { standardsOf } from './standards.ts';

export const metadata: Metadata = { title: 'Fleet' };

export default async function Page() {
  const viewer = await signedIn('/fleet');
  const { may } = shown(await welcome(viewer));
  const all = shown(await fleets(viewer));
  const now = new Map(shown(await tails(viewer)).map((tail) => [tail.registration, tail.standard]));
  const standards = await standardsOf(
    viewer,
    all.map((fleet) => fleet.type),
  );
  const of = (type: string) => standards.get(type) ?? [];
  return (
    <Main>
      <PageHead title="Fleet" />
      {all.length === 0 && <Empty title="No fleet yet">An administrator adds the first fleet, then its tails.</Empty>}
      {all.map((fleet) => (
        <FleetSection key={fleet.fleetId} fleet={fleet} now={now} standards={of(fleet.type)} manage={may.manageFleet} />
      ))}
      {may.manageFleet && (
        <Section title="Add a fleet">
          <FleetForm />
        </Section>
      )}
    </Main>
  );
}
