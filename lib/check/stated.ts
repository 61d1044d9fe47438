// Quantities that a text states for the whole fleet or an aerodrome: wind limits, autobrake by runway code, heights of the
// card. Only what is stated as such is read: a figure that merely occurs ("with 10 kt of tail wind …") is not.
import type { Gate } from '../gate/syntax.ts';
import { conjuncts } from '../procedure/cue.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import type { Place } from './finding.ts';
import { kept } from './kept.ts';
import { plain } from './names.ts';
import { textsOf } from './texts.ts';

export type Stated = {
  /** Such as `tailwind limit`. */
  readonly quantity: string;
  /** Words that narrow it, in order: `landing`, `code 3`, `wet`, `QAMB`; '' where it holds throughout. */
  readonly condition: string;
  /** Such as `10 kt`. */
  readonly value: string;
  readonly at: Place;
  /** The words of the text that say it. */
  readonly from: number;
  readonly quote: string;
  /** The step that says it records a reason. */
  readonly reason: boolean;
};

type InText = Omit<Stated, 'at' | 'reason'>;
type Read = Omit<InText, 'condition'> & { readonly near: string };

const WIND =
  /(?<before>\d{1,3}) ?kt (?:of )?(?<kind1>tail|cross)[- ]?wind\b|\b(?<kind2>tail|cross)[- ]?wind\b[^.;\d]{0,40}?(?<behind>\d{1,3}) ?kt\b|\b(?<gust>gusts?)\b[^.;\d]{0,30}?(?<gusting>\d{1,3}) ?kt\b/gi;
const LIMITING =
  /\b(limits?|limited|maximum|max|at most|up to|not above|not more|no more|not over|exceeds?|exceeding|allowed|permitted|within)\b|≤|<=/i;
const BRAKE =
  /\bautobrakes?\b(?: selector)?[^.;\w]{0,3}(?:to |at |set |is )?\s*(?<set>low|medium|high|full|maximum|max|off)\b/gi;
const CARD =
  /\b(?<name>transition altitude|transition level|engine-out acceleration(?: altitude| height)?|go-around acceleration(?: altitude| height)?|acceleration (?:altitude|height)|climb-thrust (?:altitude|height)|missed-approach altitude|final approach fix|stable gate)\b(?:,|:| is| of| at| =)?\s+(?<figure>\d{1,3}(?:[ \u00a0\u202f]\d{3})?|\d+) ?ft\b(?: (?<reference>AAL|MSL))?/gi;
/** A case that is thought of, not a figure that is set. */
const SUPPOSED = /\b(with|if|where|when|for)(?: an?| the)?\s*$/i;
const WORTH = /wind|gust|autobrake|altitude|accel|fix|gate/i;

const NONE: readonly Read[] = [];
const readIn = kept((text: string): readonly Read[] =>
  WORTH.test(text) ? [...winds(text), ...brakes(text), ...cards(text)] : NONE,
);

/** The sentence around a place, for what narrows or limits it. */
function sentenceAt(text: string, at: number): string {
  const from = Math.max(text.lastIndexOf('. ', at), text.lastIndexOf(';', at));
  const ends = [text.indexOf('. ', at), text.indexOf(';', at)].filter((end) => end >= 0);
  return text.slice(from + 1, Math.min(text.length, ...ends));
}

function winds(text: string): Read[] {
  return [...text.matchAll(WIND)].flatMap((match): Read[] => {
    const near = sentenceAt(text, match.index);
    const { before, behind, kind1, kind2, gusting } = match.groups!;
    const alone = match[0].trim().length >= near.trim().length - 4;
    if (!LIMITING.test(near) && !alone) return [];
    const quantity = gusting === undefined ? `${(kind1 ?? kind2)!.toLowerCase()}wind limit` : 'gust limit';
    return [{ quantity, value: `${Number(before ?? behind ?? gusting)} kt`, from: match.index, quote: match[0], near }];
  });
}

function brakes(text: string): Read[] {
  return [...text.matchAll(BRAKE)].map((match) => {
    const set = match.groups!.set!.toLowerCase();
    const value = set === 'max' ? 'maximum' : set;
    return { quantity: 'autobrake', value, from: match.index, quote: match[0], near: text };
  });
}

function cards(text: string): Read[] {
  return [...text.matchAll(CARD)].flatMap((match): Read[] => {
    if (SUPPOSED.test(text.slice(0, match.index))) return [];
    const { name, figure, reference } = match.groups!;
    const plainName = name!
      .toLowerCase()
      .replace(/ height$/, ' altitude')
      .replace(/acceleration$/, 'acceleration altitude');
    const value = `${figure!.replaceAll(/\D/g, '')} ft${reference === undefined ? '' : ` ${reference}`}`;
    return [{ quantity: plainName, value, from: match.index, quote: match[0], near: sentenceAt(text, match.index) }];
  });
}

const NARROWS: readonly RegExp[] = [
  /\b(?:condition )?codes? \d(?: or (?:less|more|below|above|worse|better))?\b/gi,
  /\b(dry|wet|slippery|contaminated|damp|snow|slush|ice|icy)\b/gi,
  /\b(take-off|landing|taxi)\b/gi,
  /\bQ[A-Z]{3}\b/g,
];
const narrowing = kept((text: string): readonly string[] =>
  NARROWS.flatMap((each) => (text.match(each) ?? []).map(plain)),
);

/** What is stated in a text, narrowed by its sentence and by words around it. */
export function statedInText(text: string, around = ''): readonly InText[] {
  return readIn(text).map(({ near, ...stated }) => {
    const condition = [...new Set([...narrowing(near), ...narrowing(around)])].sort().join(', ');
    return { ...stated, condition };
  });
}

const made = new WeakMap<Procedure, readonly Stated[]>();

/** All that a procedure states; made once. Its title narrows every figure, a step's `only` that step's. */
export function statedIn(procedure: Procedure, steps: readonly Step[]): readonly Stated[] {
  const before = made.get(procedure);
  if (before !== undefined) return before;
  const byId = new Map(steps.map((step) => [step.id as string, step]));
  const aerodrome = procedure.title.match(/\bQ[A-Z]{3}\b/g)?.join(' ') ?? '';
  const all = textsOf(procedure, steps).flatMap(({ at, text }) => {
    if (readIn(text).length === 0) return [];
    const step = byId.get(at.step);
    const reason = step !== undefined && step.why.trim() !== '';
    const around = `${step?.only ?? ''} ${aerodrome}`;
    return statedInText(text, around).map((stated): Stated => ({ ...stated, at, reason }));
  });
  const whole = [...all, ...steps.flatMap((step) => settingsOf(step, aerodrome))];
  made.set(procedure, whole);
  return whole;
}

/** `object: tailwind, value: 10 kt`: the object names the quantity. `wind >= -10 kt`: a tail wind of 10 kt at most. */
function settingsOf(step: Step, aerodrome: string): Stated[] {
  const named = step.value !== '' && /wind|gust|autobrake|transition|accel/i.test(step.object);
  if (!named && !step.cue.includes('wind') && !step.only.includes('wind')) return [];
  const around = `${step.only} ${step.cue} ${aerodrome}`;
  const reason = step.why.trim() !== '';
  const found: Stated[] = [];
  if (named && readIn(step.value).length === 0) {
    const joined = /\d ?kt/.test(step.value) ? `${step.object} limit: ${step.value}` : `${step.object}: ${step.value}`;
    const at = { step: step.id as string, field: 'value' };
    for (const each of statedInText(joined, around)) found.push({ ...each, at, from: 0, quote: step.value, reason });
  }
  for (const field of ['cue', 'only'] as const) {
    if (!step[field].includes('wind')) continue;
    for (const part of conjuncts(parsedCue(step[field]).gate)) {
      const limit = tailLimit(part);
      if (limit === null) continue;
      const { from, to } = part.span;
      const condition = [...new Set(narrowing(around))].sort().join(', ');
      const quote = step[field].slice(from, to);
      const at = { step: step.id as string, field };
      found.push({ quantity: 'tailwind limit', condition, value: `${limit} kt`, at, from, quote, reason });
    }
  }
  return found;
}

function tailLimit(part: Gate): number | null {
  if (part.kind !== 'compare' || part.left.kind !== 'measure' || part.left.measure !== 'wind') return null;
  if (part.right.kind !== 'amount' || part.right.value >= 0 || !part.op.startsWith('>')) return null;
  return -part.right.value;
}
