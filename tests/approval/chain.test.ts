import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Link, START, seal } from '../../lib/approval/chain.ts';
import { readEntry } from '../../lib/approval/entry.ts';
import { verify } from '../../lib/approval/verify.ts';
import { canonicalText } from '../../lib/base/canonical.ts';

const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const LOG = 'op_x';

const anyEntry = fc.record({
  log: fc.constant(LOG),
  at: fc
    .date({ noInvalidDate: true, min: new Date('2000-01-01'), max: new Date('2100-01-01') })
    .map((at) => at.toISOString()),
  by: fc.option(fc.string(), { nil: null }),
  act: fc.string(),
  subject: fc.string({ unit: 'grapheme' }),
  body: fc.dictionary(fc.string(), fc.oneof(fc.string(), fc.integer(), fc.boolean(), fc.constant(null)), {
    noNullPrototype: true,
  }),
});
const composed = (text: string) => text.normalize('NFC') === text;

function chain(entries: readonly unknown[]): Link[] {
  const links: Link[] = [];
  for (const entry of entries) links.push(seal(links.at(-1) ?? null, canonicalText(entry), hash));
  return links;
}
const anyChain = fc
  .array(
    anyEntry.filter((entry) => Object.keys(entry.body).every(composed)),
    { minLength: 1, maxLength: 8 },
  )
  .map(chain);

describe('the record', () => {
  test('what was sealed verifies, and its head is the last hash', () => {
    fc.assert(
      fc.property(anyChain, (links) => {
        expect(verify(LOG, links, hash)).toEqual({ ok: true, entries: links.length, head: links.at(-1)!.hash });
      }),
    );
    expect(verify(LOG, [], hash)).toEqual({ ok: true, entries: 0, head: START });
  });

  test('any byte flipped, in any part of any entry, breaks it there', () => {
    fc.assert(
      fc.property(
        anyChain,
        fc.nat(),
        fc.constantFrom('body', 'previous', 'hash'),
        fc.nat(),
        fc.integer({ min: 1, max: 255 }),
        (links, at, part, place, bits) => {
          const index = at % links.length;
          const bytes = Buffer.from(links[index]![part as 'body']);
          bytes[place % bytes.length]! ^= bits;
          // What is no UTF-8 any more is read by the database's driver as replacement characters.
          const text = bytes.toString('utf8');
          const broken = links.map((link, i) => (i === index ? { ...link, [part]: text } : link));
          expect(verify(LOG, broken, hash)).toMatchObject({ ok: false, brokenAt: index + 1 });
        },
      ),
      { numRuns: 2_000 },
    );
  });

  test('an entry left out, doubled or carried elsewhere breaks it', () => {
    fc.assert(
      fc.property(
        anyChain.filter((links) => links.length > 2),
        fc.nat(),
        (links, at) => {
          const index = at % (links.length - 1);
          const without = links.filter((_, i) => i !== index);
          expect(verify(LOG, without, hash)).toMatchObject({ ok: false, brokenAt: index + 1 });
          const doubled = [...links.slice(0, index + 1), ...links.slice(index)];
          expect(verify(LOG, doubled, hash)).toMatchObject({ ok: false, brokenAt: index + 2 });
          const turned = [...links.slice(0, index), links[index + 1]!, links[index]!, ...links.slice(index + 2)];
          expect(verify(LOG, turned, hash)).toMatchObject({ ok: false, brokenAt: index + 1 });
          expect(verify('op_y', links, hash)).toMatchObject({ ok: false, brokenAt: 1 });
        },
      ),
    );
  });

  test('sealed rubbish is broken, not passed over', () => {
    const rubbish = ['', 'null', '[]', '{}', '{"act":1}', ' {}', '{"log":"op_x"'];
    for (const body of rubbish) {
      expect(readEntry(body).ok).toBe(false);
      expect(verify(LOG, [seal(null, body, hash)], hash)).toMatchObject({ ok: false, brokenAt: 1 });
    }
    const entry = { log: LOG, at: '2030-01-01T00:00:00.000Z', by: null, act: 'a', subject: 's', body: {} };
    for (const wrong of [{ at: 'yesterday' }, { by: 1 }, { body: [] }, { more: 1 }, { act: null }]) {
      const body = canonicalText({ ...entry, ...wrong });
      expect(verify(LOG, [seal(null, body, hash)], hash)).toMatchObject({ ok: false, brokenAt: 1 });
    }
    const spaced = JSON.stringify({ ...entry, at: entry.at });
    expect(verify(LOG, [seal(null, spaced, hash)], hash)).toMatchObject({
      ok: false,
      because: 'its text is not canonical',
    });
  });
});
