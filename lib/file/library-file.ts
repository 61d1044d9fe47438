// The library as files: any of its parts in one file, each entry whole. Aerodromes, callouts, terms, checklists, sources.
import { z } from 'zod';
import { err, ok, type Result } from '../base/result.ts';
import type { Aerodrome, Library } from '../library/library.ts';
import { ROLES } from '../procedure/procedure.ts';
import { amount, amountOf } from './amount.ts';
import { type FileProblem, pathText } from './problem.ts';
import { type Read, readAs } from './validate.ts';

const text = z.string().max(2_000);
const speaker = z.enum([...ROLES, 'either', 'the other']);

const aerodrome = z.strictObject({
  code: text,
  name: text,
  elevation: amount('ft'),
  runway: z.strictObject({ designator: text, length: amount('m') }),
  remark: text.optional(),
  'noise-class': z.enum(['close-in', 'distant', 'none']),
  'climb-thrust': amount('ft AAL'),
  acceleration: amount('ft AAL'),
  'go-around-acceleration': amount('ft AAL'),
  'engine-out-acceleration': amount('ft AAL'),
  'transition-altitude': amount('ft MSL'),
  minima: z.strictObject({ kind: z.enum(['DA', 'MDA']), altitude: amount('ft MSL'), height: amount('ft AAL') }),
  'final-approach-fix': amount('ft MSL'),
  'step-downs': z.array(amount('ft MSL')).optional(),
  'missed-approach-altitude': amount('ft MSL'),
  'missed-approach-gradient': text,
  obstacle: text.optional(),
  'route-limits': z.array(text).optional(),
  'sector-minimum': amount('ft MSL').optional(),
});

const callout = z
  .strictObject({
    id: text,
    words: text,
    by: speaker,
    trigger: text,
    reply: z.strictObject({ who: speaker, say: text.optional(), act: text.optional() }).optional(),
    silent: text.optional().describe('Why nobody answers, where nobody does.'),
    purpose: text,
  })
  .refine(
    (entry) => (entry.reply === undefined) !== (entry.silent === undefined),
    'a callout has a reply or says why none',
  );

const term = z.strictObject({
  term: text,
  meaning: text,
  allowed: z.array(text).optional(),
  forbidden: z.array(text).optional(),
});

const checklist = z.strictObject({
  id: text,
  title: text,
  'called-by': z.enum(ROLES),
  'read-by': z.enum(ROLES),
  trigger: text,
  method: z.enum(['do-then-verify', 'read-and-do']),
  items: z.array(
    z.strictObject({ challenge: text, response: text, by: z.enum(ROLES), steps: z.array(text).optional() }),
  ),
  complete: text,
});

const source = z.strictObject({
  id: text,
  publisher: z.enum(['manufacturer data', 'regulation', 'safety event', 'company policy']),
  title: text,
  revision: text.optional(),
  date: text.optional(),
  seen: z.enum(['yes', 'no']).describe('no: from memory, to be verified before a paragraph number is printed.'),
  status: z.enum(['current', 'superseded']),
});

const libraryFormat = z.strictObject({
  format: z.literal('cuewright-library/1'),
  aerodromes: z.array(aerodrome).optional(),
  callouts: z.array(callout).optional(),
  terms: z.array(term).optional(),
  checklists: z.array(checklist).optional(),
  sources: z.array(source).optional(),
});
type LibraryFormat = z.infer<typeof libraryFormat>;

/** Reads one file; the parts that it doesn't hold are empty. */
export function readLibraryFile(fileText: string, name: string): Result<Library, FileProblem[]> {
  const read = readAs(libraryFormat, fileText, name, { endMark: true });
  if (!read.ok) return read;
  const problems = repeated(read.value);
  return problems.length > 0 ? err(problems) : ok(toLibrary(read.value.value));
}

/** The format as JSON Schema, for editors and other programs. */
export function libraryJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(libraryFormat, { target: 'draft-2020-12', io: 'input' });
}

/** Files of one operator put together, in the order given. */
export function joinLibraries(parts: readonly Library[]): Library {
  return {
    aerodromes: parts.flatMap((part) => part.aerodromes),
    callouts: parts.flatMap((part) => part.callouts),
    terms: parts.flatMap((part) => part.terms),
    checklists: parts.flatMap((part) => part.checklists),
    sources: parts.flatMap((part) => part.sources),
  };
}

function toLibrary(file: LibraryFormat): Library {
  return {
    aerodromes: (file.aerodromes ?? []).map(toAerodrome),
    callouts: (file.callouts ?? []).map((entry) => ({
      id: entry.id,
      words: entry.words,
      by: entry.by,
      trigger: entry.trigger,
      reply: entry.reply?.say ?? '',
      replyBy: entry.reply?.who ?? '',
      replyAct: entry.reply?.act ?? '',
      silent: entry.silent ?? '',
      purpose: entry.purpose,
    })),
    terms: (file.terms ?? []).map((entry) => ({
      ...entry,
      allowed: entry.allowed ?? [],
      forbidden: entry.forbidden ?? [],
    })),
    checklists: (file.checklists ?? []).map((list) => ({
      id: list.id,
      title: list.title,
      calledBy: list['called-by'],
      readBy: list['read-by'],
      trigger: list.trigger,
      method: list.method,
      items: list.items.map((item) => ({ ...item, steps: item.steps ?? [] })),
      complete: list.complete,
    })),
    sources: (file.sources ?? []).map((entry) => ({
      ...entry,
      revision: entry.revision ?? '',
      date: entry.date ?? '',
      seen: entry.seen === 'yes',
    })),
  };
}

function toAerodrome(card: z.infer<typeof aerodrome>): Aerodrome {
  return {
    code: card.code,
    name: card.name,
    elevation: amountOf(card.elevation),
    runway: { designator: card.runway.designator, length: amountOf(card.runway.length) },
    remark: card.remark ?? '',
    noiseClass: card['noise-class'],
    climbThrustHeight: amountOf(card['climb-thrust']),
    accelerationHeight: amountOf(card.acceleration),
    goAroundAccelerationHeight: amountOf(card['go-around-acceleration']),
    engineOutAccelerationHeight: amountOf(card['engine-out-acceleration']),
    transitionAltitude: amountOf(card['transition-altitude']),
    minima: { kind: card.minima.kind, altitude: amountOf(card.minima.altitude), height: amountOf(card.minima.height) },
    finalApproachFix: amountOf(card['final-approach-fix']),
    stepDowns: (card['step-downs'] ?? []).map(amountOf),
    missedApproachAltitude: amountOf(card['missed-approach-altitude']),
    missedApproachGradient: card['missed-approach-gradient'],
    obstacle: card.obstacle ?? '',
    routeLimits: card['route-limits'] ?? [],
    sectorMinimum: card['sector-minimum'] === undefined ? null : amountOf(card['sector-minimum']),
  };
}

function repeated({ value, where }: Read<LibraryFormat>): FileProblem[] {
  const names = {
    aerodromes: value.aerodromes?.map((entry) => entry.code),
    callouts: value.callouts?.map((entry) => entry.id),
    terms: value.terms?.map((entry) => entry.term),
    checklists: value.checklists?.map((entry) => entry.id),
    sources: value.sources?.map((entry) => entry.id),
  };
  return Object.entries(names).flatMap(([part, list = []]) =>
    list.flatMap((name, i) => {
      if (list.indexOf(name) === i) return [];
      const path = [part, i];
      return [{ ...where(path), path: pathText(path), message: `${name} stands in ${part} twice.`, expected: [] }];
    }),
  );
}
