import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { seedText } from '../kit/seed.ts';
import { changed, reported } from './command.ts';

const page = readFileSync(new URL('../../lib/cli/format.md', import.meta.url), 'utf8');

/** All names of fields anywhere in the value. */
function namesIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(namesIn);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => [key, ...namesIn(inner)]);
}

test('every field of the JSON form is told on its page', () => {
  const planted = changed(
    seedText('procedures/engine-out-take-off.yaml'),
    'cue: speed >= VMM F12 and',
    'cue: speed >= 90 kt and',
  );
  const spoilt = changed(planted, 'say:', "say: ''\n    cue-:");
  const found = reported(['-', 'seed/procedures/go-around.yaml', 'missing.yaml'], planted);
  const unread = reported(['-'], spoilt);
  // The names within `at` of a witness are the axes of the envelope.
  const axes = found.procedures.flatMap(({ findings }) =>
    findings.flatMap(({ witness }) => (witness.kind === 'envelope' ? Object.keys(witness.at) : [])),
  );
  const names = new Set([...namesIn(found), ...namesIn(unread)].filter((name) => !axes.includes(name)));
  expect(names.size).toBeGreaterThan(40);
  expect([...names].filter((name) => !page.includes(`\`${name}\``))).toEqual([]);
});
