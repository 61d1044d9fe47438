import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalBytes, canonicalText } from '../../lib/base/canonical.ts';

describe('canonical JSON', () => {
  test('is that of RFC 8785, section 3.2', () => {
    const value = {
      numbers: [Number('333333333.33333329'), 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/',
      literals: [null, true, false],
    };
    expect(canonicalText(value)).toBe(
      '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}',
    );
  });

  test('does not know the order of keys, knows that of lists, and says the same of what it read', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonicalText(value);
        expect(canonicalText(JSON.parse(text))).toBe(text);
        expect(canonicalText(JSON.parse(text, reversed))).toBe(text);
      }),
    );
    expect(canonicalText([1, 2])).not.toBe(canonicalText([2, 1]));
  });

  test('composes text, so that one word has one hash however it was typed', () => {
    expect(canonicalText({ 'e\u0301': 'e\u0301' })).toBe(canonicalText({ '\u00e9': '\u00e9' }));
    expect(() => canonicalText({ 'e\u0301': 1, '\u00e9': 2 })).toThrow('two keys are one');
  });

  test('throws on what JSON cannot say', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, undefined, () => 1]) {
      expect(() => canonicalText(value)).toThrow();
    }
    expect(() => canonicalText({ deep: [Number.NaN] })).toThrow('finite');
  });

  test('its bytes are UTF-8', () => {
    expect([...canonicalBytes('€')]).toEqual([0x22, 0xe2, 0x82, 0xac, 0x22]);
  });
});

function reversed(_: string, value: unknown): unknown {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).reverse());
}
