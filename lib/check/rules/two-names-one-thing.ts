import { forbiddenWords, panelName } from '../object-names.ts';
import { defineRule } from '../rule.ts';
import { TEXT_FIELDS, textsOf } from '../texts.ts';
import { wordsOf } from '../witness.ts';
import { wordsIn } from '../words.ts';

export const twoNamesOneThing = defineRule({
  id: 'two-names-one-thing',
  number: 29,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Two names for one thing',
  says: 'What is handled has the name of the type data sheet, and a bare "selector" or "button" says which. Words that the operator\'s terms forbid are replaced by the term. Spoken words are not read.',
  why: 'Naming is a known factor of checklist errors: two names are two things to whoever is new.',
  source: { text: 'NASA CR 177549 (1990), on checklist design', seen: true },
  needs: ['sheet', 'library'],
  reads: ['verb', ...TEXT_FIELDS],
  messages: {
    'other-name': 'The {type} calls it "{name}", not "{words}": the same thing has two names.',
    forbidden: '"{words}" is not the word of this house: it is "{name}".',
    which: '"{words}" may be any of {names}: the hand goes to the wrong one.',
  },
  examples: {
    bad: '[{cue: then, who: PF, verb: set, object: altitude knob, value: 5 000 ft MSL}]',
    good: '[{cue: then, who: PF, verb: set, object: altitude selector, value: 5 000 ft MSL}]',
  },
  run({ procedure, steps, sheet, library }, report) {
    const forbidden = forbiddenWords(library);
    for (const { at, text } of textsOf(procedure, steps)) {
      if (at.field === 'cue') continue;
      for (const { from, to, words } of wordsIn(text, forbidden.words)) {
        const name = forbidden.terms.get(words.toLowerCase())!;
        const fix = { says: `write ${name}`, at, value: text.slice(0, from) + name + text.slice(to) };
        const witness = wordsOf(at.field, text, from, to);
        const certain = at.step !== '' && !at.field.startsWith('before');
        const data = { words, name };
        report({ at, message: 'forbidden', data, witness, read: [name], ...(certain && { fix }) });
      }
    }
    for (const { id, object } of steps) {
      const named = panelName(sheet, object);
      if (named === null || wordsIn(object, forbidden.words).length > 0) continue;
      const at = { step: id as string, field: 'object' };
      const witness = wordsOf('object', object);
      const read = [sheet.type, ...named];
      if (named.length === 1) {
        const name = named[0]!;
        const fix = { says: `write ${name}`, at, value: name };
        report({ at, message: 'other-name', data: { type: sheet.type, name, words: object }, witness, fix, read });
      } else {
        report({ at, message: 'which', data: { words: object, names: named.join(', ') }, witness, read });
      }
    }
  },
});
