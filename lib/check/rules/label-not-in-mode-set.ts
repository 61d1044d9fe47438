import { wordsOf as modeSetWords } from '../../aircraft/mode-set.ts';
import { axesOf, modeWords } from '../mode-words.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const plain = (word: string): string => word.toLowerCase().replaceAll(/[^a-z]/g, '');

export const labelNotInModeSet = defineRule({
  id: 'label-not-in-mode-set',
  number: 36,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Label not in the mode set',
  says: 'A mode word is spelled exactly as the type annunciates it, and stands on its own axis. What is pressed carries a word of the panel.',
  why: 'A word that the display never shows kills the check of the annunciation.',
  source: { text: 'Sarter & Woods 1995; Degani, Shafto & Kirlik 1995', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'verb', 'object', 'expect'],
  messages: {
    unknown: '{word} is not annunciated by the {type}: nobody will ever read it.{hint}',
    axis: '{word} belongs to {right}, not to {axis}: it is looked for in the wrong place.',
    button: 'There is no {word} to press on the {type}.',
  },
  examples: {
    bad: '[{cue: vertical = HOLD, who: PM, verb: read, object: mode line, expect: {vertical: HOLD}}]',
    good: '[{cue: vertical = LEVEL, who: PM, verb: read, object: mode line, expect: {vertical: LEVEL}}]',
  },
  run({ procedure, states, sheet }, report) {
    const all = Object.values(modeSetWords(sheet.modes)).flat();
    const read = [sheet.type, all.join()];
    for (const { at, axis, word, text } of modeWords(procedure, states)) {
      const axes = axesOf(sheet.modes, word);
      if (axes.includes(axis)) continue;
      const from = Math.max(0, text.indexOf(word));
      const witness = wordsOf(at.field, text, from, from + word.length);
      if (axes.length > 0) {
        report({ at, message: 'axis', data: { word, right: axes.join(' and '), axis }, witness, read });
        continue;
      }
      const near = all.find((known) => plain(known) === plain(word));
      const hint = near === undefined ? '' : ` The word is ${near}.`;
      // A field of the mode line is a list or a word: only the cue is one text that can be corrected as such.
      const fix =
        near === undefined || at.field !== 'cue'
          ? {}
          : { fix: { says: `write ${near}`, at, value: text.replace(word, near) } };
      report({ at, message: 'unknown', data: { word, type: sheet.type, hint }, witness, read, ...fix });
    }
    const panel = [...all, ...sheet.panel.map((object) => object.name)].join(' ').toUpperCase();
    for (const { step } of states) {
      if (step.verb !== 'press') continue;
      for (const match of step.object.matchAll(/\b[A-Z][A-Z-]{2,}\b/g)) {
        if (panel.includes(match[0])) continue;
        const witness = wordsOf('object', step.object, match.index, match.index + match[0].length);
        const data = { word: match[0], type: sheet.type };
        report({ at: { step: step.id, field: 'object' }, message: 'button', data, witness, read });
      }
    }
  },
});
