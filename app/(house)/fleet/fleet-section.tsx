import type { FleetLine } from '../../../lib/server/aircraft.ts';
import { Section } from '../../_ui/page-head.tsx';
import css from './fleet.module.css';
import { ReleaseForm, TailForm } from './fleet-forms.tsx';
import type { Standard } from './standards.ts';
import { TailTable } from './tail-table.tsx';

export function FleetSection(props: {
  fleet: FleetLine;
  now: ReadonlyMap<string, string>;
  standards: readonly Standard[];
  manage: boolean;
}) {
  const { fleet, now, standards, manage } = props;
  return (
    <Section title={`${fleet.name}, ${fleet.type}`}>
      <TailTable fleet={fleet} now={now} />
      {manage && (
        <div className={css.forms}>
          {fleet.tails.length > 0 && (
            <details>
              <summary>Release a tail to another standard</summary>
              <ReleaseForm tails={fleet.tails.map((tail) => tail.registration)} standards={standards} />
            </details>
          )}
          <details open={fleet.tails.length === 0}>
            <summary>Add a tail</summary>
            <TailForm fleetId={fleet.fleetId} standards={standards} />
          </details>
        </div>
      )}
    </Section>
  );
}
