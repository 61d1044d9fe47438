import { abbreviationsIn, definedIn } from '../abbreviations.ts';
import { wordedCue } from '../fields.ts';
import { defineRule } from '../rule.ts';
import { TEXT_FIELDS, textsOf } from '../texts.ts';
import { wordsOf } from '../witness.ts';

export const undefinedAbbreviation = defineRule({
  id: 'undefined-abbreviation',
  number: 27,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Undefined abbreviation',
  says: 'Every abbreviation is in the operator\'s terms, and is written out where it is used first, as in "pressure selector (PSR)". Words of the type data sheet, codes of aerodromes and the policy\'s list of known abbreviations need no writing out; spoken words are not read.',
  why: 'A manual that must be deciphered is not usable without difficulty.',
  source: { text: 'ICAO Annex 6 Part I and Doc 8168, on operations manuals', seen: true },
  needs: ['sheet', 'policy', 'library'],
  reads: TEXT_FIELDS,
  messages: {
    undefined: '"{words}" is in no list of terms: every reader makes out of it what he knows.',
    unexpanded: '"{words}" is used here for the first time and not written out: {meaning}',
  },
  examples: {
    bad: '[{cue: then, who: PM, verb: check, object: PSR, value: "on"}]',
    good: '[{cue: then, who: PM, verb: check, object: pressure selector, value: "on"}]',
  },
  run({ procedure, steps, sheet, policy, library }, report) {
    const defined = definedIn(sheet, policy, library);
    const seen = new Set<string>();
    for (const { at, text } of textsOf(procedure, steps)) {
      for (const { from, words } of abbreviationsIn(at.field === 'cue' ? wordedCue(text) : text)) {
        if (seen.has(words) || defined.known.has(words)) continue;
        seen.add(words);
        const meaning = defined.terms.get(words.toLowerCase());
        const expanded = text.includes(`(${words})`) || text.includes(`${words} (`);
        if (meaning !== undefined && expanded) continue;
        const witness = wordsOf(at.field, text, from, from + words.length);
        const cause = `undefined-abbreviation ${words}`;
        if (meaning === undefined) report({ at, message: 'undefined', data: { words }, witness, cause });
        else report({ at, message: 'unexpanded', data: { words, meaning }, witness, cause, read: [meaning] });
      }
    }
  },
});
