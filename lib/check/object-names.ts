// Objects as a step calls them, against the names of the sheet; and words that the operator's terms forbid.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Library } from '../library/library.ts';
import { kept } from './kept.ts';
import { plain } from './names.ts';

type Kind = Sheet['panel'][number]['kind'];
/** What a control may be called, and the kinds that the sheet may have it as. */
const CONTROLS: Readonly<Record<string, readonly Kind[]>> = {
  knob: ['selector'],
  dial: ['selector'],
  window: ['selector'],
  wheel: ['selector', 'control'],
  bug: ['selector'],
  selector: ['selector'],
  lever: ['lever'],
  handle: ['lever'],
  stick: ['lever', 'control'],
  button: ['button'],
  key: ['button'],
  'push-button': ['button'],
  pushbutton: ['button'],
  switch: ['switch', 'button'],
  toggle: ['switch'],
};

const single = (word: string): string => word.replace(/s$/, '');
const key = kept((name: string): string => plain(name).split(' ').map(single).join(' '));

type Panel = {
  readonly keys: ReadonlySet<string>;
  readonly objects: readonly { readonly name: string; readonly kind: Kind; readonly of: string }[];
};
const panels = new WeakMap<Sheet, Panel>();

function panelOf(sheet: Sheet): Panel {
  const before = panels.get(sheet);
  if (before !== undefined) return before;
  const objects = sheet.panel.map(({ name, kind }) => {
    const words = key(name).split(' ');
    const control = CONTROLS[words.at(-1)!] !== undefined;
    return { name, kind, of: (control ? words.slice(0, -1) : words).join(' ') };
  });
  const made = { keys: new Set(sheet.panel.map(({ name }) => key(name))), objects };
  panels.set(sheet, made);
  return made;
}

/** Null: it has the sheet's name, or is nothing of the panel. One name: it is that thing under another. Several: any of them. */
export function panelName(sheet: Sheet, object: string): readonly string[] | null {
  const words = key(object).split(' ');
  const kinds = CONTROLS[words.at(-1)!];
  if (kinds === undefined) return null;
  const { keys, objects } = panelOf(sheet);
  if (keys.has(words.join(' '))) return null;
  const of = words.slice(0, -1).join(' ');
  if (of === '' || of === 'the') {
    const some = objects.filter((each) => kinds.includes(each.kind)).map((each) => each.name);
    return some.length > 1 ? some : null;
  }
  const same = objects.filter((each) => each.of === of);
  const alike = same.filter((each) => kinds.includes(each.kind));
  const meant = alike.length > 0 ? alike : same;
  return meant.length === 0 ? null : meant.map((each) => each.name);
}

type Forbidden = { readonly words: readonly string[]; readonly terms: ReadonlyMap<string, string> };
const lists = new WeakMap<Library, Forbidden>();

/** `terms`: for each forbidden word, in lower case, the term that stands for it. */
export function forbiddenWords(library: Library): Forbidden {
  const before = lists.get(library);
  if (before !== undefined) return before;
  const pairs = library.terms.flatMap(({ term, forbidden }) => forbidden.map((words) => [words, term] as const));
  const made = {
    words: pairs.map(([words]) => words),
    terms: new Map(pairs.map(([words, term]) => [words.toLowerCase(), term])),
  };
  lists.set(library, made);
  return made;
}
