import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FIGURES, Given, wanted } from './published/figures.ts';
import { GROUPS, TABLE, table, USES } from './published/table.ts';
import { UNUSED } from './published/unused.ts';

describe('published figures', () => {
  for (const figure of FIGURES) {
    const use = USES[figure.id];
    if (!use) continue;
    const mark = figure.fromMemory ? ' (from memory)' : '';
    it(`${figure.id}${mark}: ${figure.statement} [${figure.source}, ${figure.section}]`, () => {
      const want = wanted(figure, use);
      const got = use.got(new Given(figure));
      expect(got.length).toBeGreaterThan(0);
      // A figure may print more than is computed, never less; `why` then says what is left out.
      expect(got.length === want.length || (use.why !== undefined && got.length < want.length)).toBe(true);
      got.forEach((value, at) => {
        const printed = want[at] as number;
        const within = typeof use.within === 'function' ? use.within : use.within[at];
        expect(within, `no tolerance for value ${at + 1}`).toBeDefined();
        const most = within?.(printed) ?? 0;
        expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(most);
      });
    });
  }
});

describe('the table of published figures', () => {
  const ids = FIGURES.map((figure) => figure.id);

  it('gives every figure a use or a reason, and never both', () => {
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.filter((id) => id in USES === id in UNUSED)).toEqual([]);
  });
  it('names no figure that is not there, and none twice', () => {
    const named = [...GROUPS.flatMap((group) => Object.keys(group)), ...Object.keys(UNUSED)];
    expect(named.filter((id) => !ids.includes(id))).toEqual([]);
    expect(new Set(named).size).toBe(named.length);
  });
  it('is up to date: run node tests/air/published/table.ts', () => {
    expect(readFileSync(TABLE, 'utf8') === table()).toBe(true);
  });
});
