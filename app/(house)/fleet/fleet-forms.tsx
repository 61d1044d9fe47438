'use client';
import { ActForm } from '../../_ui/act-form.tsx';
import { Choice, Field } from '../../_ui/field.tsx';
import { openFleet, release, takeIn } from './actions.ts';
import type { Standard } from './standards.ts';

function StandardFields({ standards }: { standards: readonly Standard[] }) {
  return (
    <>
      {standards.length === 0 ? (
        <Field label="Standard" name="standard" required hint="No sheet of this type is here yet to choose from." />
      ) : (
        <Choice label="Standard" name="standard" required defaultValue="">
          <option value="" disabled>
            choose
          </option>
          {standards.map((one) => (
            <option key={one.name} value={one.name}>
              {one.name}: {one.says}
            </option>
          ))}
        </Choice>
      )}
      <Field label="From, UTC" name="from" type="datetime-local" required hint="When maintenance released it." />
    </>
  );
}

export function ReleaseForm({ tails, standards }: { tails: readonly string[]; standards: readonly Standard[] }) {
  return (
    <ActForm
      act={(words) => release(words as Parameters<typeof release>[0])}
      onDone={() => ({ say: 'Released. Readers of this tail get the text of its standard from that time.' })}
      button="Release it"
    >
      <Choice label="Tail" name="registration" required defaultValue="">
        <option value="" disabled>
          choose
        </option>
        {tails.map((one) => (
          <option key={one}>{one}</option>
        ))}
      </Choice>
      <StandardFields standards={standards} />
    </ActForm>
  );
}

export function TailForm({ fleetId, standards }: { fleetId: string; standards: readonly Standard[] }) {
  return (
    <ActForm
      act={(words) => takeIn({ ...(words as Omit<Parameters<typeof takeIn>[0], 'fleetId'>), fleetId })}
      onDone={() => ({ say: 'The tail is in the fleet.' })}
      button="Add the tail"
    >
      <Field label="Registration" name="registration" required autoComplete="off" spellCheck={false} />
      <StandardFields standards={standards} />
    </ActForm>
  );
}

export function FleetForm() {
  return (
    <ActForm
      act={(words) => openFleet(words as Parameters<typeof openFleet>[0])}
      onDone={() => ({ say: 'The fleet is there. Add its tails.' })}
      button="Add the fleet"
    >
      <Field label="Name" name="name" required autoComplete="off" />
      <Field label="Type" name="type" required hint="As the type data sheet names it." autoComplete="off" />
    </ActForm>
  );
}
