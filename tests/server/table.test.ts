import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fleets, sheetRevisions } from '../../lib/server/aircraft.ts';
import { startDraft } from '../../lib/server/drafts.ts';
import { permitDraft } from '../../lib/server/journal.ts';
import { submitDraft } from '../../lib/server/submission.ts';
import type { Viewer } from '../../lib/server/within.ts';
import {
  CHANGE,
  codeOf,
  type House,
  importDraft,
  must,
  NAMES,
  type Name,
  openHouse,
  PROCEDURE,
  PROCEDURE_ID,
  rolesOf,
  signThrough,
} from './house.ts';
import { MODULES, TABLE, type Things } from './table.ts';

let house: House;
let things: Things;
const SINGLE = NAMES.filter((name) => name !== 'everything' && name !== 'second');

beforeAll(async () => {
  house = await openHouse();
  const { drafter, administrator } = house.people;
  const first = await importDraft(drafter);
  await signThrough(house, first.draftId);
  const other = PROCEDURE.replaceAll(PROCEDURE_ID, 'pr_other1').replaceAll('DT-', 'OX-');
  const candidate = await must(submitDraft(drafter, (await importDraft(drafter, other)).draftId, ''));
  const draft = (await must(startDraft(drafter, PROCEDURE_ID, CHANGE))).draftId;
  const [fleet] = await must(fleets(administrator));
  const [sheet] = await must(sheetRevisions(administrator));
  things = {
    draft,
    candidate: candidate.candidateId,
    sha256: candidate.sha256,
    fleet: fleet!.fleetId,
    sheet: sheet!.id,
    person: 'pe_second',
  };
});
afterAll(() => house.close());

test('the table holds every function that the modules of deeds export', () => {
  const exported = Object.values(MODULES)
    .flatMap((module) => Object.entries(module))
    .filter(([, value]) => typeof value === 'function')
    .map(([name]) => name);
  const notDeeds = ['candidatePage', 'changeOf'];
  const tested = [...TABLE.map((row) => row.name), 'permitDraft', ...notDeeds];
  expect([...new Set(exported)].sort()).toEqual(tested.sort());
});

describe('a member of another operator', () => {
  test.each(TABLE)('$name', async ({ call, foreign }) => {
    const result = await call(house.stranger, things);
    if (foreign === 'unknown') expect(result).toMatchObject({ ok: false, error: { code: 'unknown' } });
    const told = JSON.stringify(result);
    for (const id of ['op_a', ...Object.values(things), 'Q-AAA', 'pe_drafter']) expect(told).not.toContain(id);
  });
  test('permitDraft', async () => {
    expect(await permitDraft(house.stranger, things.draft)).toBe(null);
  });
});

describe('nobody, with a session that does not stand', () => {
  test.each(TABLE)('$name', async ({ call }) => {
    const { operatorId, personId } = house.people.everything;
    expect(await codeOf(call({ operatorId, personId, sessionId: 'made up' }, things))).toBe('signed-out');
  });
  test.each(TABLE)("$name, another person's session", async ({ call }) => {
    const mixed: Viewer = { ...house.people.everything, sessionId: house.people.line.sessionId };
    expect(await codeOf(call(mixed, things))).toBe('signed-out');
  });
});

describe('every role', () => {
  const cases = TABLE.flatMap((row) =>
    SINGLE.map((name): [string, Name, (typeof TABLE)[number]] => [row.name, name, row]),
  );
  test.each(cases)('%s as %s', async (_, name, { call, roles }) => {
    const code = await codeOf(call(house.people[name], things));
    const allowed = rolesOf(name).some((role) => roles.includes(role));
    if (allowed) expect(['not-permitted', 'signed-out', 'unknown']).not.toContain(code);
    else expect(code).toBe('not-permitted');
  });
  test('permitDraft', async () => {
    const rights = await Promise.all(
      SINGLE.map(async (name) => [name, await permitDraft(house.people[name], things.draft)]),
    );
    expect(Object.fromEntries(rights)).toEqual({
      drafter: 'write',
      trainer: 'read',
      captain: 'read',
      approver: null,
      line: null,
      auditor: 'read',
      administrator: null,
    });
  });
});
