import type { FlightSubject, OpenFlight } from '../../../../lib/server/flights.ts';

type Query = Readonly<Record<string, string | readonly string[] | undefined>>;

/** What the address names to be flown; null where it names nothing. */
export function subjectOf(query: Query): FlightSubject | null {
  const one = (name: string): string => {
    const value = query[name];
    return typeof value === 'string' ? value : '';
  };
  if (one('draft') !== '') return { draft: one('draft') };
  if (one('candidate') !== '') return { candidate: one('candidate') };
  const issue = Number(one('issue'));
  return one('procedure') !== '' && Number.isInteger(issue) && issue > 0
    ? { procedure: one('procedure'), issue }
    : null;
}

/** Where the text that is flown is read. */
export function homeOf({ kind, id, procedureId, name }: OpenFlight): string {
  if (kind === 'draft') return `/desk/${id}`;
  return kind === 'candidate' ? `/reviews/${id}` : `/procedures/${procedureId}/${name.replace('issue ', '')}`;
}

export const pathOf = (query: Query): string =>
  `/fly?${new URLSearchParams(Object.entries(query).filter((pair): pair is [string, string] => typeof pair[1] === 'string'))}`;
