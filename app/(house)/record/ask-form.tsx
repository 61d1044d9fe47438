import { Button } from '../../_ui/button.tsx';
import { Choice, Field, rowClass } from '../../_ui/field.tsx';

/** Plain forms that ask by address, so that an answer can be linked to and printed. */
export function AskForm({ tails, tail, at }: { tails: readonly string[]; tail?: string; at?: string }) {
  return (
    <form className={rowClass} method="get">
      <Choice label="Tail" name="tail" defaultValue={tail ?? ''} required>
        <option value="" disabled>
          choose
        </option>
        {tails.map((one) => (
          <option key={one}>{one}</option>
        ))}
      </Choice>
      <Field label="Time, UTC" name="at" type="datetime-local" defaultValue={at} required />
      <Button type="submit" look="main">
        Ask
      </Button>
    </form>
  );
}

export function FilterForm(props: {
  acts: readonly string[];
  people: readonly { id: string; name: string }[];
  act?: string;
  person?: string;
}) {
  return (
    <form className={rowClass} method="get">
      <Choice label="Act" name="act" defaultValue={props.act ?? ''}>
        <option value="">all</option>
        {props.acts.map((one) => (
          <option key={one}>{one}</option>
        ))}
      </Choice>
      <Choice label="By" name="person" defaultValue={props.person ?? ''}>
        <option value="">everyone</option>
        {props.people.map((one) => (
          <option key={one.id} value={one.id}>
            {one.name}
          </option>
        ))}
      </Choice>
      <Button type="submit">Show</Button>
    </form>
  );
}
