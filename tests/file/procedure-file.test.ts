import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readProcedureFile, writeProcedureFile } from '../../lib/file/procedure-file.ts';
import { anyProcedure } from '../kit/procedures.ts';

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
