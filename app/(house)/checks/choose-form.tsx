import { SEVERITIES } from '../../../lib/check/finding.ts';
import { type Asked, KINDS, STAGES } from '../../../lib/check/manual.ts';
import { PHASES } from '../../../lib/procedure/procedure.ts';
import { Button, LinkButton } from '../../_ui/button.tsx';
import { Choice, Field, rowClass } from '../../_ui/field.tsx';

/** Asks by address, so that what was found can be linked to. */
export function ChooseForm({ asked }: { asked: Asked }) {
  return (
    <form className={rowClass} method="get" role="search">
      <Field label="Words" name="words" type="search" defaultValue={asked.words} />
      <Choose label="Severity" name="severity" among={SEVERITIES.map((one) => [one, one])} chosen={asked.severity} />
      <Choose label="Asks" name="kind" among={KINDS} chosen={asked.kind} />
      <Choose label="Phase" name="phase" among={PHASES.map((one) => [one, one])} chosen={asked.phase} />
      <Choose label="From" name="stage" among={STAGES.map((one) => [one, one])} chosen={asked.stage} />
      <Button type="submit">Find</Button>
      {Object.values(asked).some(Boolean) && <LinkButton href="/checks">Show all</LinkButton>}
    </form>
  );
}

type Choosing = {
  readonly label: string;
  readonly name: string;
  readonly among: readonly (readonly [string, string])[];
  readonly chosen: string | undefined;
};

function Choose({ label, name, among, chosen }: Choosing) {
  return (
    <Choice label={label} name={name} defaultValue={chosen ?? ''}>
      <option value="">any</option>
      {among.map(([value, words]) => (
        <option key={value} value={value}>
          {words}
        </option>
      ))}
    </Choice>
  );
}
