import { describe, expect, it } from 'vitest';
import { type Answer, monthsAfter, reasonProblem, settleProblem, weigh } from '../../lib/check/answer.ts';
import { checkProcedure } from '../../lib/check/check.ts';
import type { Finding } from '../../lib/check/finding.ts';
import { procedureWith } from '../../lib/procedure/build.ts';
import { housePolicy, tn182 } from '../kit/world.ts';

const found = (armed: readonly string[] | null, cue = 'event "x"'): readonly Finding[] =>
  checkProcedure(procedureWith({ exit: { armed }, steps: [{ cue }] }), { sheet: tn182, policy: housePolicy }).findings;
const [open] = found(null);
const answer = (more: Partial<Answer> = {}): Answer => ({
  kind: 'answer',
  check: open!.check,
  at: open!.at,
  read: open!.read,
  reason: 'the next procedure states its own armed modes',
  by: 'person-1',
  on: '2026-01-31',
  until: null,
  ...more,
});

describe('an answer', () => {
  it('stands while what the check read is the same', () => {
    const result = weigh(found(null, 'event "typo elsewhere"'), [answer()], '2026-11-25', 12);
    expect(result.standing).toHaveLength(1);
    expect(result.open).toEqual([]);
    expect(result.reopened).toEqual([]);
  });

  it('is asked again when that has changed', () => {
    const result = weigh(found(null), [answer({ read: 'other' })], '2026-11-25', 12);
    expect(result.open).toHaveLength(1);
    expect(result.reopened).toMatchObject([{ because: 'what the check read has changed' }]);
  });

  it('is asked again after its months', () => {
    expect(weigh(found(null), [answer()], '2027-01-31', 12).standing).toHaveLength(1);
    expect(weigh(found(null), [answer()], '2027-02-01', 12).reopened).toMatchObject([
      { because: 'the time of the answer is over' },
    ]);
  });

  it('is shown as unused when there is nothing left to answer', () => {
    const result = weigh(found([]), [answer()], '2026-11-25', 12);
    expect(result.reopened).toMatchObject([{ finding: null, because: 'nothing is left to answer' }]);
  });

  it('never settles a STOP; a waiver does until its day', () => {
    const stop = found([], '')[0]!;
    const of = { check: stop.check, at: stop.at, read: stop.read };
    expect(stop.severity).toBe('STOP');
    expect(weigh([stop], [answer(of)], '2026-11-25', 12).open).toEqual([stop]);
    const waiver = answer({ ...of, kind: 'waiver', until: '2026-12-31' });
    expect(weigh([stop], [waiver], '2026-12-31', 12).open).toEqual([]);
    expect(weigh([stop], [waiver], '2027-01-01', 12).open).toEqual([stop]);
  });
});

describe('who settles, and with what words', () => {
  const stop = found([], '')[0]!;
  it('refuses an answer to a STOP and a waiver by a drafter or without an end', () => {
    expect(settleProblem(stop, { kind: 'answer', by: 'a', until: null }, [])).toContain('fixed, or waived');
    expect(settleProblem(stop, { kind: 'waiver', by: 'a', until: '2027-01-01' }, ['a'])).toContain('drafted');
    expect(settleProblem(stop, { kind: 'waiver', by: 'b', until: null }, ['a'])).toContain('day');
    expect(settleProblem(stop, { kind: 'waiver', by: 'b', until: '2027-01-01' }, ['a'])).toBeNull();
    expect(settleProblem(open!, { kind: 'answer', by: 'a', until: null }, ['a'])).toBeNull();
  });

  it('wants a reason of substance', () => {
    expect(reasonProblem('ok', 5)).toContain('5');
    expect(reasonProblem('ok ok ok ok ok ok', 5)).not.toBeNull();
    expect(reasonProblem('the exit is stated by the next procedure', 5)).toBeNull();
  });

  it('counts months by the calendar', () => {
    expect(monthsAfter('2026-01-31', 1)).toBe('2026-02-28');
    expect(monthsAfter('2024-02-29', 12)).toBe('2025-02-28');
    expect(monthsAfter('2026-11-25', 12)).toBe('2027-11-25');
    expect(monthsAfter('2026-12-15', 2)).toBe('2027-02-15');
  });
});
