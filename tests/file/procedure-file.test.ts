import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FiledAnswer } from '../../lib/file/answer-file.ts';
import { readPlacedProcedure, readProcedureFile, writeProcedureFile } from '../../lib/file/procedure-file.ts';
import { procedureWith } from '../../lib/procedure/build.ts';
import { anyProcedure } from '../kit/procedures.ts';

const anyDay = fc
  .integer({ min: 0, max: 40_000 })
  .map((days) => new Date(Date.UTC(1990, 0, 1) + days * 86_400_000).toISOString().slice(0, 10));
const anyText = fc.string({ unit: 'grapheme', maxLength: 30 }).map((text) => text.normalize('NFC').trim());
const anyAnswer: fc.Arbitrary<FiledAnswer> = fc.record({
  kind: fc.constantFrom('answer', 'waiver'),
  check: anyText,
  at: fc.record({ step: anyText, field: anyText }),
  read: anyText,
  reason: anyText,
  by: anyText,
  on: anyDay,
  until: anyDay,
});
const openEnded = anyAnswer.map((answer): FiledAnswer => ({ ...answer, kind: 'answer', until: null }));

describe('the law of the format', () => {
  test('what was written is read back, whatever it says', () => {
    fc.assert(
      fc.property(anyProcedure, (procedure) => {
        const text = writeProcedureFile(procedure);
        expect(readProcedureFile(text, 'law')).toEqual({ ok: true, value: procedure });
      }),
      { numRuns: 200 },
    );
  });

  test('answers and waivers come back as they were', () => {
    fc.assert(
      fc.property(anyProcedure, fc.array(fc.oneof(anyAnswer, openEnded), { maxLength: 5 }), (procedure, answers) => {
        const read = readPlacedProcedure(writeProcedureFile(procedure, answers), 'law');
        expect(read.ok && [read.value.procedure, read.value.answers]).toEqual([procedure, answers]);
      }),
      { numRuns: 100 },
    );
  });

  test('a list that two parts of a procedure share is written twice, not pointed at', () => {
    const shared = ['F0'];
    const procedure = procedureWith({ entry: { flaps: shared }, exit: { flaps: shared } });
    expect(readProcedureFile(writeProcedureFile(procedure), 'shared')).toEqual({ ok: true, value: procedure });
  });

  test('a file without answers has none, and a waiver without an end is refused where it stands', () => {
    const text = 'format: cuewright-procedure/1\nid: pr_1\ntitle: T\nsteps: []\n';
    expect(readPlacedProcedure(`${text}...\n`, 'old')).toMatchObject({ ok: true, value: { answers: [] } });
    const waiver = 'answers:\n  - { kind: waiver, check: x, field: cue, read: a, reason: r, by: p, on: 2026-02-30 }\n';
    const read = readPlacedProcedure(`${text}${waiver}...\n`, 'new');
    expect(read.ok ? [] : read.error.map(({ line, path, message }) => [line, path, message])).toEqual([
      [6, 'answers[0].on', '"2026-02-30" is no day.'],
      [6, 'answers[0]', 'A waiver has a last day.'],
    ]);
  });

  test('writing again gives the same text', () => {
    fc.assert(
      fc.property(anyProcedure, (procedure) => {
        const text = writeProcedureFile(procedure);
        const again = readProcedureFile(text, 'law');
        expect(again.ok && writeProcedureFile(again.value)).toBe(text);
      }),
      { numRuns: 100 },
    );
  });

  test('cut anywhere, the file is never taken for a whole one', () => {
    fc.assert(
      fc.property(anyProcedure, fc.double({ min: 0, max: 1, noNaN: true }), (procedure, share) => {
        const text = writeProcedureFile(procedure).trimEnd();
        const part = text.slice(0, Math.floor(share * (text.length - 1)));
        expect(readProcedureFile(part, 'half').ok).toBe(false);
      }),
      { numRuns: 200 },
    );
  });
});
