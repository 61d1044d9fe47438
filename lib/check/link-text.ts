// What a text refers to, as it is written: labels of steps, names of lists and procedures, places by number.
import { kept } from './kept.ts';

const LABEL = /\b[A-Z]{2,}-[A-Z0-9]+\b/g;
const LIST = /\blist "([^"]+)"/g;
const PROCEDURE = /\bprocedure ([a-z][a-z-]*(?: [a-z-]+){0,3}?)(?= from\b| in\b| at\b| when\b| is\b|[;,.)"]|$)/g;
const POSITION =
  /\b(?:see|refer to|as in|according to|under) (?:(?:section|paragraph|chapter|page|para) \d+(?:\.\d+)*|\d+\.\d+(?:\.\d+)*)/gi;
const WORTH = /-|\d|\blist\b|\bprocedure\b/;

export type Links = {
  /** Looks like labels, each once; GO-AROUND does too. */
  readonly labels: readonly string[];
  readonly names: readonly string[];
  readonly positions: readonly string[];
};

const NONE: Links = { labels: [], names: [], positions: [] };

export const linksIn = kept((text: string): Links => {
  if (!WORTH.test(text)) return NONE;
  const labels = [...new Set<string>(text.match(LABEL) ?? [])];
  const names = [...text.matchAll(LIST), ...text.matchAll(PROCEDURE)].map(([, name]) => name!);
  const positions = text.match(POSITION) ?? [];
  return labels.length + names.length + positions.length === 0 ? NONE : { labels, names, positions };
});
