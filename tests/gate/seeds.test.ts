// The cues of the demo world are gate notation, in the form in which they are printed.
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { parseGate } from '../../lib/gate/parse.ts';
import { printGate } from '../../lib/gate/print.ts';

const folder = new URL('../../seed/procedures/', import.meta.url);

function cues(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(cues);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, each]) =>
    key === 'cue' && typeof each === 'string' ? [each] : cues(each),
  );
}

test.each(readdirSync(folder).filter((name) => name.endsWith('.yaml')))('%s', (name) => {
  const found = cues(parse(readFileSync(new URL(name, folder), 'utf8'))).filter((cue) => cue !== '');
  expect(found.length).toBeGreaterThan(0);
  for (const cue of found) {
    const { gate, problems } = parseGate(cue);
    expect({ cue, problems }).toEqual({ cue, problems: [] });
    expect(printGate(gate!)).toBe(cue);
  }
});
