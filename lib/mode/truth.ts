// What a cue says about the mode line, as far as the mode line alone can tell.
import type { ModeSet, ModeTransition } from '../aircraft/mode-set.ts';
import type { Gate } from '../gate/syntax.ts';
import type { Expect, ExpectedMode } from '../procedure/procedure.ts';
import type { Line } from './layout.ts';

/** `unknown`: speeds, heights, words and judgements are outside the machine. */
export type Truth = 'true' | 'false' | 'unknown';

const flipped: Readonly<Record<Truth, Truth>> = { true: 'false', false: 'true', unknown: 'unknown' };
const sure = (is: boolean): Truth => (is ? 'true' : 'false');

export function truthOf(gate: Gate | null, line: Line, modes: ModeSet): Truth {
  if (gate === null) return 'unknown';
  switch (gate.kind) {
    case 'mode':
      return sure(gate.words.includes(line[gate.axis]));
    case 'armed':
      return sure(line.armed.includes(gate.word));
    case 'not':
      return flipped[truthOf(gate.of, line, modes)];
    case 'within':
      return truthOf(gate.of, line, modes);
    case 'all':
    case 'any': {
      const parts = gate.of.map((part) => truthOf(part, line, modes));
      const settles: Truth = gate.kind === 'all' ? 'false' : 'true';
      if (parts.includes(settles)) return settles;
      return parts.includes('unknown') ? 'unknown' : flipped[settles];
    }
    case 'trend':
      return gate.measure === 'altitude' ? trendOf(gate.way, line, modes) : 'unknown';
    case 'event':
      return afterEvent(gate.text, line, modes);
    default:
      return 'unknown';
  }
}

/** The altitude goes the way of the vertical mode, where the mode has one. */
function trendOf(way: 'increasing' | 'decreasing', line: Line, modes: ModeSet): Truth {
  if (modes.levels?.includes(line.vertical)) return 'false';
  const up = modes.climbing.includes(line.vertical);
  const down = modes.descending.includes(line.vertical);
  return up || down ? sure(up === (way === 'increasing')) : 'unknown';
}

/** Whether the gate says anything of the mode line at all. */
export function speaksOfModes(gate: Gate | null): boolean {
  if (gate === null) return false;
  if (gate.kind === 'all' || gate.kind === 'any') return gate.of.some(speaksOfModes);
  if (gate.kind === 'not' || gate.kind === 'within') return speaksOfModes(gate.of);
  return gate.kind === 'mode' || gate.kind === 'armed';
}

/** The same, or of an event of the table that the line shows to have happened. */
export function asksTheLine(gate: Gate | null, modes: ModeSet): boolean {
  if (gate === null) return false;
  if (gate.kind === 'all' || gate.kind === 'any') return gate.of.some((part) => asksTheLine(part, modes));
  if (gate.kind === 'not' || gate.kind === 'within') return asksTheLine(gate.of, modes);
  if (gate.kind === 'trend') return gate.measure === 'altitude';
  return gate.kind === 'event' ? phaseAfter(gate.text, modes) !== null : speaksOfModes(gate);
}

/** An event of the table has happened where the phase is the one that its rule leads to. */
function afterEvent(text: string, line: Line, modes: ModeSet): Truth {
  const phase = phaseAfter(text, modes);
  return phase === null ? 'unknown' : sure(phase === line.phase);
}

function phaseAfter(text: string, modes: ModeSet): string | null {
  const rule = modes.rules.find((one: ModeTransition) => one.event === text);
  return rule === undefined || 'any' in rule ? null : (rule.then.phase ?? null);
}

const fitsWord = (asked: ExpectedMode, before: string, now: string): boolean => {
  if (asked === '') return true;
  if (asked === 'same') return before === now;
  return typeof asked === 'string' ? asked === now : asked.includes(now);
};

/** The armed words that the step expects, when those before are known; null: it says nothing of them. */
function armedWanted(expect: Expect, before: readonly string[]): readonly string[] | null {
  const { armed } = expect;
  if (armed === null) return null;
  if (armed === 'same') return before;
  if (Array.isArray(armed)) return armed as readonly string[];
  const change = armed as { readonly add?: readonly string[]; readonly drop?: readonly string[] };
  return [...before.filter((word) => !change.drop?.includes(word)), ...(change.add ?? [])];
}

export type ExpectAxis = 'thrust' | 'lateral' | 'vertical' | 'armed';

/** The axes on which the line is not what the step tells the crew to read. */
export function misfits(expect: Expect, before: Line, now: Line): readonly ExpectAxis[] {
  const wrong = (['thrust', 'lateral', 'vertical'] as const).filter(
    (axis) => !fitsWord(expect[axis], before[axis], now[axis]),
  );
  const wanted = armedWanted(expect, before.armed);
  const same =
    wanted === null ||
    (wanted.every((word) => now.armed.includes(word)) && now.armed.every((word) => wanted.includes(word)));
  return same ? wrong : [...wrong, 'armed'];
}

export const statesNothing = (expect: Expect): boolean =>
  expect.thrust === '' && expect.lateral === '' && expect.vertical === '' && expect.armed === null;
