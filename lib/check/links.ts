// What a link leads to: a step, a procedure, a list, a card, a source; or a term, by which the operator says that a text
// is kept elsewhere.
import type { Library } from '../library/library.ts';
import { allSteps, type Procedure } from '../procedure/procedure.ts';
import type { Corpus } from './corpus.ts';
import { listNamed } from './list-calls.ts';
import { fitsTitle, nameWords, plain } from './names.ts';

/** `baulked landing (not flown)`, `procedure go-around`: what is in brackets says something about the link. */
const bare = (name: string): string =>
  name
    .replace(/\([^)]*\)?/g, ' ')
    .replace(/^\s*(the )?procedure\s+/i, '')
    .replaceAll(/["“”)]/g, '')
    .trim();

/** A word for what the name leads to; null: to nothing that is known. */
export function targetOf(name: string, procedure: Procedure, library: Library, others: Corpus): string | null {
  const wanted = bare(name);
  const ownNames = procedure.branches.flatMap((branch) => [branch.label, branch.title, branch.id]);
  if (wanted === '' || ownNames.includes(wanted)) return 'branch';
  if (allSteps(procedure).some((step) => step.label === wanted || step.id === wanted)) return 'step';
  if (others.read('label', wanted).length > 0) return 'step';
  if (wanted === procedure.id || fitsTitle(wanted, procedure.title)) return 'procedure';
  const [first] = nameWords(wanted);
  const heads = first === undefined ? [] : [...others.read('word', first), ...others.read('word', wanted)];
  if (heads.some(({ of, tells }) => of === wanted || fitsTitle(wanted, tells.title))) return 'procedure';
  if (listNamed(wanted, library) !== null) return 'list';
  if (library.aerodromes.some((card) => card.code === wanted)) return 'card';
  const text = plain(wanted);
  if (library.sources.some(({ id, title }) => plain(id) === text || plain(title) === text)) return 'source';
  const key = nameWords(wanted).join(' ');
  return library.terms.some(({ term }) => nameWords(term).join(' ') === key) ? 'term' : null;
}
