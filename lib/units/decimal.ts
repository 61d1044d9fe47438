/**
 * A decimal number as a pilot types it. What can be read two ways is not read at all: a comma is a decimal sign in one
 * country and sets thousands apart in the next, and `1.500` is one and a half or fifteen hundred.
 */
import { err, ok, type Result } from '../base/result.ts';

export interface NumberProblem {
  /** One sentence, ending in what to type instead. */
  readonly sentence: string;
  /** Texts to offer; the first is the likelier. Empty when nothing sensible can be offered. */
  readonly instead: readonly string[];
}

/** Longest text that is looked at; no number of the trade comes near. */
export const LONGEST_NUMBER = 40;

const refuse = (sentence: string, ...instead: string[]): Result<never, NumberProblem> => err({ sentence, instead });

const PLAIN = /^[+-]?(?:\d+|\d{1,3}(?: \d{3})+)(?:\.\d+)?$|^[+-]?\.\d+$/;

/** Any of the spaces and minus signs a text brings along when it is pasted. */
export const tidy = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\s\u00a0\u2007\u2009\u202f]+/g, ' ')
    .replace(/[\u2212\u2010\u2011\u2013]/g, '-')
    .trim();

/** Three places, written so that they can't be taken for thousands. */
const certain = (fraction: string): string => {
  const short = fraction.replace(/(?<=\d)0+$/, '');
  return short.length === 3 ? `${short}0` : short;
};

const group = (digits: string): string => digits.replace(/\B(?=(\d{3})+$)/g, ' ');

/**
 * The number in `text`, which holds nothing else. Accepts `61100`, `61 100`, `61.1`, `.78`, `-28`, `+5`.
 * Refuses, with a sentence: any comma or apostrophe, a point before exactly three figures (unless nothing but zero stands
 * before it), two points, exponents, words, and the empty text.
 */
export function parseDecimal(text: string): Result<number, NumberProblem> {
  const said = tidy(text);
  if (said === '') return refuse('Nothing was typed: type a number.');
  if (said.length > LONGEST_NUMBER) {
    return refuse(`The number has ${said.length} characters; at most ${LONGEST_NUMBER} are read: type fewer figures.`);
  }
  const mark = said.match(/^([+-]?\d{1,3}(?:[ .,'’]\d{3})*)([.,'’])(\d+)$|^([+-]?\d+)([.,'’])(\d+)$/);
  if (/[,'’]/.test(said)) return refuseComma(said, mark);
  const dots = said.split('.').length - 1;
  if (dots > 1) return refuse(`"${said}" has ${dots} points: type thousands with a space, such as 1 500.`);
  if (/^[+-]?0*[1-9]\d{0,2}\.\d{3}$/.test(said)) {
    const [whole = '', fraction = ''] = said.split('.');
    const decimal = `${whole}.${certain(fraction)}`;
    return refuse(
      `"${said}" can be read as ${group(`${whole}${fraction}`)} or as a decimal: type ${group(`${whole}${fraction}`)} or ${decimal}.`,
      group(`${whole}${fraction}`),
      decimal,
    );
  }
  if (!PLAIN.test(said)) {
    if (/^[+-]?[\d ]+\.$/.test(said)) return refuse(`"${said}" ends in a point: leave it out.`, said.slice(0, -1));
    if (/^[+-]?[\d .]+$/.test(said)) {
      return refuse(`"${said}" has a space in the wrong place: thousands stand in threes, such as 61 100.`);
    }
    return refuse(`"${said}" is not a number: type figures, such as 61 100 or 61.1.`);
  }
  return ok(Number(said.replaceAll(' ', '')));
}

function refuseComma(said: string, mark: RegExpMatchArray | null): Result<never, NumberProblem> {
  const bare = said.replace(/[ .,'’]/g, '');
  if (!mark || !/^[+-]?\d+$/.test(bare)) {
    return refuse(`"${said}" is not a number: type figures, such as 61 100 or 61.1.`);
  }
  const whole = (mark[1] ?? mark[4] ?? '').replace(/[ .,'’]/g, '');
  const fraction = mark[3] ?? mark[6] ?? '';
  const asDecimal = `${group(whole)}.${certain(fraction)}`;
  if (fraction.length !== 3 || whole.length > 3 || Number(whole) === 0) {
    return refuse(
      `"${said}" has a sign that is read in two ways: type the decimal sign as a point, ${asDecimal}.`,
      asDecimal,
    );
  }
  const asThousands = group(`${whole}${fraction}`);
  return refuse(
    `"${said}" can be read as ${asThousands} or as a decimal: type ${asThousands} or ${asDecimal}.`,
    asThousands,
    asDecimal,
  );
}
