import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkProcedure } from '../../lib/check/check.ts';
import { toldBy } from '../../lib/check/told.ts';
import { readProcedureFile } from '../../lib/file/procedure-file.ts';
import { procedureNames, seedProcedure } from '../kit/seed.ts';
import { houseFacts } from '../kit/world.ts';

const folder = new URL('../../seed/procedures/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

/** With the whole library, all tails and each other at hand. */
const house = procedureNames().map(seedProcedure);

describe('the procedures of the demo operator', () => {
  it('are there', () => expect(files.length).toBeGreaterThanOrEqual(4));

  it.each(files)('%s is free of STOP and of unanswered ANSWER', (name) => {
    const read = readProcedureFile(readFileSync(new URL(name, folder), 'utf8'), name);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const others = house.filter(({ id }) => id !== read.value.id).map(toldBy);
    const { findings, crashed, checked } = checkProcedure(read.value, { ...houseFacts, others });
    const held = findings.filter((finding) => finding.severity !== 'ADVICE');
    expect(
      held.map((finding) => `${finding.number} ${finding.at.step} ${finding.at.field}: ${finding.message}`),
    ).toEqual([]);
    expect(crashed).toEqual([]);
    expect(checked.rules.length).toBeGreaterThanOrEqual(13);
  });
});
