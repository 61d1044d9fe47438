// Scenarios 7 (the numbers of one fleet) and 8 (a tail that is converted) of the acceptance scenarios, planted in the
// procedures of the demo operator.
import { describe, expect, it } from 'vitest';
import { checkProcedure } from '../../lib/check/check.ts';
import type { Finding } from '../../lib/check/finding.ts';
import { governanceOn } from '../../lib/check/governance.ts';
import { rulesUpTo } from '../../lib/check/stage.ts';
import { toldBy } from '../../lib/check/told.ts';
import type { Fleet } from '../../lib/library/library.ts';
import { procedureWith } from '../../lib/procedure/build.ts';
import type { Procedure, ProcedureId } from '../../lib/procedure/procedure.ts';
import { edited } from '../kit/mutate.ts';
import { procedureNames, seedFleet, seedProcedure } from '../kit/seed.ts';
import { houseFacts } from '../kit/world.ts';

const house = procedureNames().map(seedProcedure);
const named = (name: string): Procedure => seedProcedure(name);
/** Checks of text and numbers, and those that hear the others: what explores and flies has its own scenarios. */
const rules = rulesUpTo('publication').filter(({ kind }) => !/[XS]/.test(kind));

function findings(procedure: Procedure, all: readonly Procedure[], facts = {}): readonly Finding[] {
  const others = all.filter((each) => each.id !== procedure.id).map(toldBy);
  return checkProcedure(procedure, { ...houseFacts, others, ...facts }, rules).findings;
}
const stops = (all: readonly Finding[]) => all.filter((each) => each.severity === 'STOP');

describe('a short wet runway: 10 kt of tail wind in the approach, 15 kt in the fleet card', () => {
  const approach = edited(named('instrument-approach'), 'IA-01', { note: 'tailwind limit 10 kt' });
  const card = {
    ...procedureWith({
      title: 'Fleet card',
      class: '',
      phases: ['landing'],
      steps: [{ note: 'maximum tailwind 15 kt' }],
    }),
    id: 'pr_card' as ProcedureId,
  };
  const all = [...house.filter(({ id }) => id !== approach.id), approach, card];

  it('is stopped twice for one cause, in each of the two texts', () => {
    const found = stops(findings(approach, all));
    expect(found.map(({ check }) => check).sort()).toEqual(['one-fleet-two-numbers', 'wind-limits-agree']);
    expect(new Set(found.map(({ cause }) => cause)).size).toBe(1);
    for (const each of found) expect(each.witness).toMatchObject({ first: '10 kt', second: '15 kt' });
    expect(found.every(({ message }) => message.includes('in Fleet card'))).toBe(true);
    const there = findings(card, all).filter(({ check }) => check === 'one-fleet-two-numbers');
    expect(there.map(({ message }) => message)).toEqual([expect.stringContaining('is 15 kt here and 10 kt in')]);
  });

  it('is healed by one number', () => {
    const same = { ...card, steps: card.steps.map((step) => ({ ...step, note: 'maximum tailwind 10 kt' })) };
    expect(stops(findings(approach, [...all.filter((each) => each !== card), same]))).toEqual([]);
    expect(
      stops(
        findings(
          approach,
          all.filter((each) => each !== card),
        ),
      ),
    ).toEqual([]);
  });
});

describe('a tail is converted to standard B on day D', () => {
  const D = '2027-02-01';
  const day = governanceOn('2026-11-25');
  const climb: Procedure = {
    ...named('climb-altitude-change'),
    effectivity: { type: 'TN-182', standards: ['A'], note: '' },
  };
  const all = [...house.filter(({ id }) => id !== climb.id), climb];
  /** The tails that hold standard A today; Q-SKF goes to B on day D. */
  const fleet: Fleet = {
    ...seedFleet(),
    tails: seedFleet()
      .tails.filter((tail) => tail.options.at(-1)!.value === 'A')
      .map((tail) => {
        if (tail.registration !== 'Q-SKF') return tail;
        const [held] = tail.options;
        return {
          ...tail,
          options: [
            { ...held!, until: D },
            { ...held!, value: 'B' as const, from: D, until: null },
          ],
        };
      }),
  };
  const holes = (given: readonly Procedure[], facts: object) =>
    stops(findings(climb, given, { governance: day, ...facts })).filter(
      ({ check }) => check === 'effectivity-hole-or-overlap',
    );

  it('the text for A alone leaves Q-SKF uncovered from that day', () => {
    const [hole, ...more] = holes(all, { fleet });
    expect(more).toEqual([]);
    expect(hole!.message).toContain(`Q-SKF from ${D}: no text of "Climb and altitude change" is for standard B`);
    expect(hole!.witness).toMatchObject({ first: 'A', second: 'B', says: expect.stringContaining(`Q-SKF from ${D}`) });
  });

  it('in the whole fleet it names those that hold B today as well, without a day', () => {
    expect(holes(all, {})[0]!.message).toMatch(/^Q-SKG, Q-SKH, Q-SKI: no text/);
  });

  it('is healed by adding B, here or in a text of its own, and by nothing that was true once', () => {
    const both = { ...climb, effectivity: { ...climb.effectivity, standards: ['A', 'B'] } };
    expect(stops(findings(both, all, { fleet, governance: day }))).toEqual([]);
    const forB: Procedure = {
      ...climb,
      id: 'pr_climb_b' as ProcedureId,
      title: 'Climb and altitude change, standard B',
      effectivity: { type: 'TN-182', standards: ['B'], note: '' },
    };
    expect(holes([...all, forB], { fleet })).toEqual([]);
    expect(holes(all, { fleet: { ...fleet, tails: fleet.tails.slice(0, 5) } })).toEqual([]);
  });
});
