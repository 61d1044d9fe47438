// In a file what is not stated is not there. These few lines decide what counts as not stated.

/** `said` keeps a value that would count as not stated, such as the empty list of "nothing armed". */
type Field = { readonly said: unknown } | unknown;

/** The fields that say something; undefined if none does. Empty text, empty lists, null and undefined say nothing. */
export function stated(fields: Readonly<Record<string, Field>>): Record<string, unknown> | undefined {
  const kept = Object.entries(fields).flatMap(([key, field]) => {
    if (isSaid(field)) return [[key, field.said]];
    const nothing =
      field === '' || field === null || field === undefined || (Array.isArray(field) && field.length === 0);
    return nothing ? [] : [[key, field]];
  });
  return kept.length === 0 ? undefined : Object.fromEntries(kept);
}

const isSaid = (field: Field): field is { readonly said: unknown } =>
  typeof field === 'object' && field !== null && !Array.isArray(field) && Object.keys(field).join() === 'said';
