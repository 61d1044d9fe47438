import { expect, it } from 'vitest';
import { figuresIn } from '../../lib/check/figures.ts';
import { commandsIn, wordsIn } from '../../lib/check/words.ts';

const shown = (text: string): readonly string[] =>
  figuresIn(text).map(
    (each) => `${text.slice(each.from, each.digitsTo)}|${each.unit ?? '-'}|${each.needsUnit ? 'needs' : 'free'}`,
  );

it.each([
  ['180 kt', ['180|kt|needs']],
  ['3 000 ft AAL', ['3 000|ft|needs']],
  ['190 to 195 kt', ['190|kt|needs', '195|kt|needs']],
  ['range 160 NM, then 80', ['160|NM|needs', '80|-|needs']],
  ['-5/+10 kt', ['-5|kt|needs', '+10|kt|needs']],
  ['track 000 to 179', ['000|-|free', '179|-|free']],
  ['heading 060', ['060|-|free']],
  ['FL 190 or M 0.74', ['190|-|free', '0.74|-|free']],
  ['2 attempts, then step 9', ['2|-|free', '9|-|free']],
  ['30° to 45°', ['30|°|needs', '45|°|needs']],
  ['45 %', ['45|%|needs']],
  ['F12, GA-07, V1, T12, ISA+15, Q-SKA', []],
  ['at 14:05Z', []],
  ['PM "speed 225"', []],
])('reads the figures of %s', (text, wanted) => expect(shown(text)).toEqual(wanted));

it('keeps offsets when spoken words are blanked out', () => {
  expect(figuresIn('say "210", then 180 kt')[0]).toMatchObject({ from: 16, digitsTo: 19, to: 22, value: 180 });
});

it('finds whole words of a list, the longest first, whatever their case', () => {
  const found = wordsIn('As required, or as required by the crew', ['crew', 'as', 'as required']);
  expect(found.map((each) => each.words)).toEqual(['As required', 'as required', 'crew']);
  expect(wordsIn('screwed', ['crew'])).toEqual([]);
});

it('takes a word at the head of a clause for a command', () => {
  expect(commandsIn('Set the pumps. The set value; check it.').map((each) => each.words)).toEqual(['Set', 'check']);
});
