import { Field, LongField } from '../../_ui/field.tsx';

/** A change request: every change of value, actor, order or mode belongs to one. */
export function ChangeFields() {
  return (
    <>
      <LongField
        label="Why it must change"
        name="reason"
        required
        hint="The hazard, the report or the data revision, in a sentence."
      />
      <Field label="Source" name="source" hint="Document, revision and section; or the report." />
      <LongField
        label="Risk note"
        name="riskNote"
        hint="What could go worse by this change, and what guards it. May be written later."
      />
      <Field label="Due" name="dueOn" type="date" />
    </>
  );
}
