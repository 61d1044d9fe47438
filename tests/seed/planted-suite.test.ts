// Every check of text and figures finds what is planted for it, in many procedures and on both sheets; harmless rewordings of
// the demo procedures stop nobody.
import { describe, expect, it, test } from 'vitest';
import { allSteps, type Procedure } from '../../lib/procedure/procedure.ts';
import { SEEDED } from '../kit/planted/bases.ts';
import { harmless } from '../kit/planted/harmless.ts';
import { alarms, MEANT, PLANTS, plant } from '../kit/planted/suite.ts';

const REWORDINGS = 504;
const ROUNDS = 8;
const SLOW = 60_000;

describe('the suite', () => {
  it('has an entry for each check of text and figures, and for no other', () =>
    expect(Object.keys(PLANTS).sort()).toEqual([...MEANT].sort()));
});

describe('planted defects', () => {
  test.each(MEANT.map((check) => [check]))(
    '%s: at least five, in four procedures, on both sheets, all found',
    (check) => {
      const { mutants, procedures, onOther, missed } = plant(check);
      expect(missed).toEqual([]);
      expect(mutants - onOther).toBeGreaterThanOrEqual(5);
      expect(procedures).toBeGreaterThanOrEqual(4);
      expect(onOther).toBeGreaterThanOrEqual(1);
    },
    SLOW,
  );
});

const bare = (procedure: Procedure): string => JSON.stringify(procedure);

describe('harmless rewordings', () => {
  it('are another text each, with other ids and the same deeds', () => {
    const texts = SEEDED.flatMap(({ procedure }) => [1, 2, 3].map((seed) => harmless(procedure, seed)));
    expect(new Set(texts.map(bare)).size).toBe(texts.length);
    for (const [index, { procedure }] of SEEDED.entries()) {
      const [before, after] = [allSteps(procedure), allSteps(texts[index * 3]!)];
      expect(after.map(({ who, verb, object }) => [who, verb, object])).toEqual(
        before.map(({ who, verb, object }) => [who, verb, object]),
      );
      expect(after.map(({ id }) => id).filter((id) => before.some((step) => step.id === id))).toEqual([]);
    }
    expect(bare(harmless(SEEDED[0]!.procedure, 7))).toBe(bare(harmless(SEEDED[0]!.procedure, 7)));
  });

  test.each(Array.from({ length: ROUNDS }, (_, round) => [round]))(
    'round %d of rewordings brings nothing that the text before had not',
    (round) => {
      const share = REWORDINGS / ROUNDS;
      const found = alarms(round * share, (round + 1) * share);
      expect(found.filter(({ severity }) => severity !== 'ADVICE')).toEqual([]);
    },
    SLOW,
  );
});
