import { describe, expect, test } from 'vitest';
import { readLibraryFile } from '../../lib/file/library-file.ts';
import { readFleetFile, readPeopleFile } from '../../lib/file/people-file.ts';
import { allSteps } from '../../lib/procedure/procedure.ts';
import { procedureNames, seedFleet, seedLibrary, seedPeople, seedProcedure, seedText } from '../kit/seed.ts';

const library = seedLibrary();

describe('the demo world', () => {
  test('nine tails, six of standard A and three of standard B today', () => {
    const now = seedFleet().tails.map((tail) => [tail.registration, tail.options.find((o) => o.until === null)?.value]);
    expect(now).toEqual([...'ABCDEFGHI'].map((letter) => [`Q-SK${letter}`, letter < 'G' ? 'A' : 'B']));
  });

  test('drafter, reviewer and approver are three people, and every role is held', () => {
    const roles = new Map<string, string[]>();
    for (const person of seedPeople()) {
      for (const { role } of person.roles) roles.set(role, [...(roles.get(role) ?? []), person.signIn]);
    }
    expect(roles.get('technical pilot')).toEqual(['reth', 'wenning']);
    expect(roles.get('approver')).toEqual(['harrow', 'tove']);
    expect([...roles.keys()].sort()).toEqual([
      'administrator',
      'approver',
      'auditor',
      'line pilot',
      'standards captain',
      'technical pilot',
      'training captain',
    ]);
  });

  test('a procedure belongs to somebody who may draft', () => {
    const pilots = seedPeople().filter((person) => person.roles.some((held) => held.role === 'technical pilot'));
    for (const name of procedureNames()) {
      expect(pilots.map((person) => person.name)).toContain(seedProcedure(name).owner);
    }
  });

  test('heights of a card agree with its altitudes', () => {
    expect(library.aerodromes.map((card) => card.code)).toEqual(['QHLM', 'QSTR', 'QVDS', 'QAMB', 'QKAR']);
    for (const card of library.aerodromes) {
      expect(card.minima.altitude - card.elevation, card.code).toBe(card.minima.height);
      expect(card.engineOutAccelerationHeight).toBeGreaterThanOrEqual(1_500);
      expect(card.missedApproachAltitude).toBeGreaterThan(card.minima.altitude);
      expect(card.accelerationHeight).toBe(card.noiseClass === 'close-in' ? 3_000 : 1_500);
    }
  });

  test('checklist items point to steps that exist', () => {
    const labels = new Set(procedureNames().flatMap((name) => allSteps(seedProcedure(name)).map((step) => step.label)));
    const named = library.checklists.flatMap((list) => list.items.flatMap((item) => item.steps));
    expect(named.length).toBeGreaterThan(8);
    for (const label of named) expect([...labels]).toContain(label);
  });
});

describe('files of the library that are not right', () => {
  test('a card without a reference, a callout that leaves the reply open, an entry twice', () => {
    const card = seedText('library/aerodromes.yaml').replace('10 000 ft MSL', '10 000 ft');
    const read = readLibraryFile(card, 'cards');
    expect(!read.ok && read.error[0]).toMatchObject({ path: 'aerodromes[0].transition-altitude', line: 14 });
    const open = 'format: cuewright-library/1\ncallouts:\n  - {id: a, words: a, by: PM, trigger: a, purpose: a}\n...\n';
    const silent = readLibraryFile(open, 'calls');
    expect(!silent.ok && silent.error[0]).toMatchObject({ line: 3, path: 'callouts[0]' });
    const twice = 'format: cuewright-library/1\nterms:\n  - {term: a, meaning: b}\n  - {term: a, meaning: c}\n...\n';
    const repeated = readLibraryFile(twice, 'terms');
    expect(!repeated.ok && repeated.error[0]).toMatchObject({ line: 4, message: 'a stands in terms twice.' });
  });

  test('a role that ends before it begins, a day that does not exist, a tail twice', () => {
    const person = (period: string) =>
      readPeopleFile(
        `format: cuewright-people/1\npeople:\n  - {id: a, name: A, sign-in: a, title: t, roles: [{role: auditor, ${period}}]}\n...\n`,
        'people',
      );
    expect(person('from: 2026-01-01').ok).toBe(true);
    for (const period of ['from: 2026-01-01, until: 2025-01-01', 'from: 2026-02-30']) {
      const read = person(period);
      expect(!read.ok && read.error[0]).toMatchObject({ line: 3, path: 'people[0].roles[0]' });
    }
    const fleet = seedText('fleet.yaml').replace('Q-SKB', 'Q-SKA');
    const read = readFleetFile(fleet, 'fleet');
    expect(!read.ok && read.error[0]?.message).toBe('Q-SKA stands in tails twice.');
  });
});
