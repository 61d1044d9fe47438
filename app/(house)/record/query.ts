import type { RecordFilter } from '../../../lib/server/record.ts';

/** What the record page is asked by its address. */
export type Query = { tail?: string; at?: string; act?: string; person?: string; before?: string };

export const filterOf = ({ act, person, before }: Query): RecordFilter => ({
  act: act || undefined,
  personId: person || undefined,
  before: Number(before) || undefined,
});

/** The tail and the UTC time that are asked about, or null while the question is not whole. */
export function questionOf({ tail, at }: Query): { tail: string; at: string } | null {
  const time = at ? new Date(`${at}Z`) : null;
  return tail && time && !Number.isNaN(time.getTime()) ? { tail, at: time.toISOString() } : null;
}
