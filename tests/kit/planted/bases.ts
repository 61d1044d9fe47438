// What defects are planted in: the demo procedures, the same for each aerodrome, and all of them on the second sheet.
import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { toldBy } from '../../../lib/check/told.ts';
import type { Procedure, ProcedureId } from '../../../lib/procedure/procedure.ts';
import { procedureNames, seedProcedure } from '../seed.ts';
import { otherSheet } from '../sheets.ts';
import { houseFacts } from '../world.ts';
import type { Base } from './plant.ts';

const CODES = ['QHLM', 'QSTR', 'QVDS', 'QAMB', 'QKAR'];
const HEADS = [
  ['normal-take-off', 'Take-off at'],
  ['engine-out-take-off', 'Engine-out take-off at'],
  ['instrument-approach', 'Instrument approach at'],
  ['go-around', 'Go-around at'],
] as const;

/** The text for one aerodrome only, with a permanent id of its own. */
function boundTo(procedure: Procedure, head: string, code: string): Procedure {
  return { ...procedure, id: `${procedure.id}${code.toLowerCase()}` as ProcedureId, title: `${head} ${code}` };
}

const WORDS: readonly (readonly [RegExp, string])[] = [
  [/\bF(?:35|26)\b/g, 'WHOLE'],
  [/\bF(?:18|12)\b/g, 'HALF'],
  [/\bF6\b/g, 'LOW'],
  [/\bF0\b/g, 'NIL'],
  [/\b(flap|gear) lever\b/g, '$1 handle'],
  [/\b(?:TAKEOFF|CLIMB|GOAROUND|LATCHED)\b/g, 'PUSH'],
  [/\b(?:GOVERN|IDLE)\b/g, 'KEEP'],
  [/\bMANUAL\b/g, 'HAND'],
  [/\b(?:ROLL|CENTRELINE|STRAIGHT|HEADING)\b/g, 'WINGS'],
  [/\b(?:ROUTE|COURSE)\b/g, 'TRACK'],
  [/\b(?:ASCENT|DEPART|LIFT|RATE-UP)\b/g, 'RISE'],
  [/\b(?:LEVEL|CAPTURE|GLIDE|FLARE|DESCENT|CONTOUR|RATE-DN)\b/g, 'FLAT'],
  [/\bPITCH\b/g, 'NOSE'],
  [/\bALT\b/g, 'STOP'],
  [/\bTN-182\b/g, 'VQ-48'],
];
const reworded = (text: string): string => WORDS.reduce((all, [from, to]) => all.replaceAll(from, to), text);

function inOtherWords<T>(value: T): T {
  if (typeof value === 'string') return reworded(value) as T;
  if (Array.isArray(value)) return [...new Set(value.map(inOtherWords))] as T;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, inOtherWords(part)])) as T;
}

/** The procedure for the type with four detents: lever steps that move nothing there are left out. */
function onOther(procedure: Procedure, { weights }: Sheet): Procedure {
  const same = inOtherWords(procedure);
  const stays = (steps: Procedure['steps']): Procedure['steps'] =>
    steps.filter(
      ({ object, value, cue }) => !/\bflap handle\b/.test(object) || !cue.includes(`flaps ${value} indicated`),
    );
  const top = procedure.envelope.weight?.to === 66_800 ? weights.maximumLanding : weights.maximumTakeOff;
  return {
    ...same,
    steps: stays(same.steps),
    branches: same.branches.map((branch) => ({ ...branch, steps: stays(branch.steps) })),
    envelope: { ...same.envelope, weight: { from: weights.minimumFlight.value, to: top.value } },
  };
}

const seeded = procedureNames().map(seedProcedure);
const bound = HEADS.flatMap(([name, head]) => CODES.map((code) => boundTo(seedProcedure(name), head, code)));

function basesOf(
  procedures: readonly Procedure[],
  all: readonly Procedure[],
  sheet: Sheet,
  other: boolean,
): readonly Base[] {
  return procedures.map((procedure) => {
    const others = all.filter(({ id }) => !procedure.id.startsWith(id)).map(toldBy);
    const { fleet } = houseFacts;
    const type = sheet.type;
    const tails = fleet === null ? null : { ...fleet, type, tails: fleet.tails.map((tail) => ({ ...tail, type })) };
    return { procedure, facts: { ...houseFacts, sheet, others, fleet: tails }, other };
  });
}

const sheetThere = otherSheet();
const [seededThere, boundThere] = [seeded, bound].map((list) => list.map((each) => onOther(each, sheetThere)));

export const BASES: readonly Base[] = [
  ...basesOf([...seeded, ...bound], seeded, houseFacts.sheet!, false),
  ...basesOf([...seededThere!, ...boundThere!], seededThere!, sheetThere, true),
];
/** Those of the demo operator as they are. */
export const SEEDED: readonly Base[] = BASES.slice(0, seeded.length);
