import { describe, expect, test } from 'vitest';
import {
  asTyped,
  type PolicyField,
  policyChanges,
  policyFrom,
  policyGroups,
  valueAt,
} from '../../app/(house)/policy/policy-fields.ts';
import { isNamed } from '../../app/(house)/policy/policy-words.ts';
import { defaultPolicy, readPolicy } from '../../lib/policy/policy.ts';
import { housePolicy } from '../kit/world.ts';

const fields: readonly PolicyField[] = policyGroups.flatMap((group) => group.fields);
const typed = (policy: unknown) => Object.fromEntries(fields.map(({ path }) => [path, asTyped(valueAt(policy, path))]));

/** Places of all leaves of a policy, by its data. */
function leaves(value: unknown, path = ''): string[] {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return [path];
  return Object.entries(value).flatMap(([key, part]) => leaves(part, path === '' ? key : `${path}.${key}`));
}

describe('the policy as fields', () => {
  test('every figure of a policy has one field, and no field is without a figure', () => {
    const places = leaves(defaultPolicy).filter((path) => path !== 'format');
    expect(fields.map((field) => field.path).sort()).toEqual(places.sort());
  });
  test('every field is named in words, and every number has its unit', () => {
    expect(fields.filter((field) => !isNamed(field.path)).map((field) => field.path)).toEqual([]);
    expect(fields.filter((field) => field.kind === 'number' && field.unit === '').map((field) => field.path)).toEqual(
      [],
    );
    expect(isNamed('speeds.somethingNew')).toBe(false);
  });
  test('limits and choices come from the schema', () => {
    const field = (path: string) => fields.find((one) => one.path === path);
    expect(field('speeds.bankBelowVmm')).toMatchObject({ kind: 'number', least: 5, most: 45, whole: false });
    expect(field('signOff.people')).toMatchObject({ kind: 'number', least: 2, most: 3, whole: true });
    expect(field('floors.takeOff.speed')).toMatchObject({ kind: 'choice', choices: ['V2', 'VREF', 'VMM'] });
    expect(field('words.elastic')?.kind).toBe('words');
  });
  test.each([defaultPolicy, housePolicy])('what the form says of a policy is that policy', (policy) => {
    expect(readPolicy(policyFrom(typed(policy)))).toEqual({ ok: true, value: policy });
  });
  test('what is no number is refused at its place', () => {
    const read = readPolicy(policyFrom({ ...typed(housePolicy), 'speeds.bandMinimum': 'twenty', 'lists.items': '' }));
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.error.map((one) => one.at).sort()).toEqual(['lists.items', 'speeds.bandMinimum']);
  });
  test('numbers may be typed with spaces between thousands', () => {
    expect(valueAt(policyFrom({ ...typed(housePolicy), 'gates.highAerodrome': '3 000' }), 'gates.highAerodrome')).toBe(
      3000,
    );
  });
});

describe('what a version changes', () => {
  test('nothing against itself', () => expect(policyChanges(housePolicy, housePolicy)).toEqual([]));
  test('a figure with its unit, words one by one', () => {
    const after = policyFrom({
      ...typed(housePolicy),
      'speeds.selectionMargin': '7',
      'words.weakForce': [...housePolicy.words.weakForce.slice(1), 'ought'].join('\n'),
    });
    expect(policyChanges(housePolicy, after).map((change) => [change.path, change.says])).toEqual([
      ['speeds.selectionMargin', `${housePolicy.speeds.selectionMargin} → 7 kt`],
      ['words.weakForce', `without “${housePolicy.words.weakForce[0]}”, with “ought”`],
    ]);
  });
});
