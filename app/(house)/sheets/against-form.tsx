import { Button } from '../../_ui/button.tsx';
import { Choice, rowClass } from '../../_ui/field.tsx';

export function AgainstForm({ others, against }: { others: readonly { id: string; says: string }[]; against: string }) {
  return (
    <form className={rowClass} method="get">
      <Choice label="Compare with" name="against" defaultValue={against}>
        {others.map((one) => (
          <option key={one.id} value={one.id}>
            {one.says}
          </option>
        ))}
      </Choice>
      <Button type="submit">Compare</Button>
    </form>
  );
}
