import { Button, LinkButton } from '../../_ui/button.tsx';
import { Choice, Field, rowClass } from '../../_ui/field.tsx';

/** Asks by address, so that what was found can be linked to. */
export function SearchForm({ kinds, kind, words }: { kinds: readonly string[]; kind: string; words: string }) {
  return (
    <form className={rowClass} method="get" role="search">
      <Field label="Words" name="words" type="search" defaultValue={words} />
      <Choice label="Among" name="kind" defaultValue={kind}>
        <option value="">everything</option>
        {kinds.map((one) => (
          <option key={one} value={one}>
            {one}s
          </option>
        ))}
      </Choice>
      <Button type="submit">Find</Button>
      {(words || kind) && <LinkButton href="/library">Show all</LinkButton>}
    </form>
  );
}
