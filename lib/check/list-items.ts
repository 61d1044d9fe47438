// One item of a checklist against the steps that do what it asks for.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Checklist } from '../library/library.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import type { Corpus } from './corpus.ts';
import { figuresIn } from './figures.ts';
import { detentsNamed, type ListCall } from './list-calls.ts';
import { nameWords, plain } from './names.ts';

type Item = Checklist['items'][number];
export type Judged = {
  readonly fault: 'no-step' | 'gone' | 'after' | 'value' | 'words';
  readonly steps: string;
  readonly value: string;
};

export const itemText = ({ challenge, response }: Item): string => `${challenge}: ${response}`;

const stem = (word: string): string => word.replace(/(?:ation|ing|s|d|e)$/, '');
const stems = (text: string): ReadonlySet<string> => new Set(nameWords(text).map(stem));
const share = (a: string, b: string): boolean => {
  const there = stems(b);
  return [...stems(a)].some((word) => there.has(word));
};
const DEEDS = new Set(['set', 'select', 'press', 'move', 'arm', 'engage', 'disengage', 'check', 'monitor', 'brief']);
/** `standard, both; below transition: local setting`: either state is right, so that no step need have been done. */
const EITHER = /;/;
const OPPOSITE: readonly (readonly [string, string])[] = [
  ['up', 'down'],
  ['on', 'off'],
  ['armed', 'disarmed'],
  ['open', 'closed'],
];

/** What is wrong with the item where the list is called; null: nothing. */
export function judged(
  item: Item,
  { index }: ListCall,
  procedure: Procedure,
  steps: readonly Step[],
  others: Corpus,
): Judged | null {
  const linked = steps.filter((step) => item.steps.includes(step.label));
  const line = procedure.steps;
  if (linked.length === 0) {
    if (item.steps.some((label) => others.read('label', label).some(({ of }) => of !== procedure.id))) return null;
    if (item.steps.length > 0) return { fault: 'gone', steps: item.steps.join(', '), value: '' };
    const before = line
      .slice(0, index)
      .some((step) => DEEDS.has(step.verb) && share(item.challenge, `${step.object} ${step.value}`));
    const given = share(item.challenge, procedure.entry.also);
    return before || given || EITHER.test(item.response) ? null : { fault: 'no-step', steps: '', value: '' };
  }
  const done = linked.filter((step) => {
    const place = line.indexOf(step);
    return place < 0 || place < index;
  });
  if (done.length === 0) {
    return EITHER.test(item.response)
      ? null
      : { fault: 'after', steps: linked.map((step) => step.label).join(', '), value: '' };
  }
  const values = done.filter((step) => differs(item.response, step));
  if (values.length === done.length)
    return { fault: 'value', steps: values.at(-1)!.label, value: values.at(-1)!.value };
  const last = done.at(-1)!;
  const spoken = [last.object, last.value, last.say, last.cue, last.checkSees].join(' ');
  return share(item.challenge, spoken) ? null : { fault: 'words', steps: last.label, value: last.object };
}

/** Whether the response names another position, detent or figure than the step leaves. */
function differs(response: string, step: Step): boolean {
  const said = new Set(plain(response).split(/[^\p{L}]+/u));
  const left = new Set(plain(step.value).split(/[^\p{L}]+/u));
  for (const [one, other] of OPPOSITE) {
    if (
      (left.has(one) && !left.has(other) && said.has(other) && !said.has(one)) ||
      (left.has(other) && !left.has(one) && said.has(one) && !said.has(other))
    )
      return true;
  }
  const detent = /\bflap/i.test(step.object) ? (step.value.match(/\b[A-Z]+\d{1,2}\b/g) ?? []) : [];
  if (detent.length > 0) {
    const numbers = Array.from({ length: 61 }, (_, degree) => `F${degree}`);
    const named = detentsNamed(response, numbers).map((name) => name.slice(1));
    return named.length > 0 && !detent.some((name) => named.includes(name.replace(/\D/g, '')));
  }
  const theirs = figuresIn(response).filter((figure) => figure.unit !== null);
  const ours = figuresIn(step.value).filter((figure) => figure.unit !== null);
  return theirs.some((figure) => {
    const same = ours.filter((each) => each.unit === figure.unit);
    return same.length > 0 && !same.some((each) => each.value === figure.value);
  });
}

/** Levers of the configuration on this type, by the word that an item would use: flap, gear, speedbrake; not thrust, not fuel. */
export function configurations(sheet: Sheet): readonly RegExp[] {
  const levers = sheet.panel.filter(({ kind, name }) => kind === 'lever' && !/thrust|fuel|throttle|power/i.test(name));
  return levers.map(({ name }) => new RegExp(`\\b${name.split(' ')[0]!.replace(/s$/, '')}s?\\b`, 'i'));
}

/** The last critical step before the list that moves each of the levers. */
export function killersBefore(
  { step, index }: ListCall,
  levers: readonly RegExp[],
  line: readonly Step[],
): readonly { readonly killer: Step; readonly lever: RegExp }[] {
  const before = line.slice(0, index).filter((each) => each !== step && each.flags.includes('critical'));
  return levers.flatMap((lever) => {
    const killer = before.findLast((each) => ['move', 'select', 'set'].includes(each.verb) && lever.test(each.object));
    return killer === undefined ? [] : [{ killer, lever }];
  });
}
