/**
 * The place in a gate that is being read. It notes, at the furthest token anything was asked of, what was asked: that list
 * is what an error expects there and, at the end of the text, what completion offers.
 */
import type { GateProblem, Span } from './syntax.ts';
import type { Token } from './tokens.ts';
import { type Meaning, PHRASES, SLOTS } from './words.ts';

export type Fix = GateProblem['fix'];

export class Cursor {
  readonly tokens: readonly Token[];
  readonly problems: GateProblem[];
  at = 0;
  depth = 0;
  private furthest = 0;
  /** Reading failed at the end of the text: what is asked there afterwards is no longer what was missing. */
  private done = false;
  /** Whole lists, sorted out only when somebody wants to know: most gates are right. */
  private asked: (readonly string[])[] = [];

  constructor(tokens: readonly Token[], problems: readonly GateProblem[]) {
    this.tokens = tokens;
    this.problems = [...problems];
  }

  peek(ahead = 0): Token {
    return this.tokens[Math.max(0, Math.min(this.at + ahead, this.tokens.length - 1))]!;
  }

  next(): Token {
    const token = this.peek();
    if (token.kind !== 'end') this.at++;
    return token;
  }

  /** Notes what could stand here, without looking. */
  ask(...wanted: readonly string[]): void {
    this.askAt(this.at, wanted);
  }

  private askAt(index: number, wanted: readonly string[]): void {
    if (this.done || index < this.furthest) return;
    if (index > this.furthest) {
      this.furthest = index;
      this.asked = [];
    }
    this.asked.push(wanted);
  }

  /** What was asked for at the furthest token; empty when that is not the present one. */
  expected(): readonly string[] {
    return this.slots().flatMap((each) => SLOTS.get(each) ?? [each]);
  }

  /** The same, with what is open (a detent, a number) as a slot: `*detent`. */
  slots(): readonly string[] {
    return this.at === this.furthest ? [...new Set(this.asked.flat())] : [];
  }

  /** What was asked for at the end of the text; empty when reading never came so far. */
  slotsAtEnd(): readonly string[] {
    return this.furthest === this.tokens.length - 1 ? [...new Set(this.asked.flat())] : [];
  }

  /** Is this word next? Asked quietly: it is not offered. */
  sees(word: string, ahead = 0): boolean {
    const token = this.peek(ahead);
    return token.kind === 'word' && token.text.toLowerCase() === word;
  }

  seesSign(...signs: readonly string[]): boolean {
    const token = this.peek();
    return token.kind === 'sign' && signs.includes(token.text);
  }

  takeWord(...words: readonly string[]): string | null {
    this.askAt(this.at, words);
    const token = this.peek();
    if (token.kind !== 'word') return null;
    const found = words.find((word) => word === token.text || word.toLowerCase() === token.text.toLowerCase());
    if (found === undefined) return null;
    this.at++;
    return found;
  }

  takeSign(...signs: readonly string[]): string | null {
    this.askAt(this.at, signs);
    if (!this.seesSign(...signs)) return null;
    return this.next().text;
  }

  /** The longest phrase of the vocabulary that stands here. */
  takePhrase(): Meaning | null {
    const token = this.peek();
    if (token.kind !== 'word') return null;
    let taken: Meaning | null = null;
    for (const { words, spelt, meaning } of PHRASES.get(token.text.toLowerCase()) ?? []) {
      const missed = words.findIndex((word, index) => !this.sees(word, index));
      if (missed < 0) {
        this.at += words.length;
        taken = meaning;
        break;
      }
      if (this.peek(missed).kind === 'end') this.askAt(this.at + missed, [spelt.split(' ').slice(missed).join(' ')]);
    }
    return taken;
  }

  span(from: Span): Span {
    return { from: from.from, to: Math.max(from.to, this.tokens[this.at - 1]?.span.to ?? 0) };
  }

  fail(code: GateProblem['code'], span: Span, message: string, expected: readonly string[], fix: Fix = null): null {
    if (this.peek().kind === 'end' && this.expected().length > 0) this.done = true;
    this.problems.push({ code, span, message, expected, fix });
    return null;
  }

  /** Moves to the next word or sign that joins conditions at this level, so that what follows is still read. */
  recover(): void {
    let open = 0;
    for (; this.peek().kind !== 'end'; this.at++) {
      if (this.seesSign('(')) open++;
      else if (this.seesSign(')') && open-- === 0) return;
      else if (open === 0 && (this.sees('and') || this.sees('or') || this.seesSign(','))) return;
    }
  }
}
