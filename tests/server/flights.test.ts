import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readSheet } from '../../lib/aircraft/sheet.ts';
import { figuresOf } from '../../lib/flight/figures.ts';
import { flyProcedure } from '../../lib/flight/fly.ts';
import { settingsFor } from '../../lib/flight/start.ts';
import { FLIGHT_VERSION } from '../../lib/flight/trace.ts';
import { startDraft } from '../../lib/server/drafts.ts';
import { keepFlight, keptFlights, openFlight } from '../../lib/server/flights.ts';
import { readRecord, verifyRecord } from '../../lib/server/record.ts';
import { sendBack } from '../../lib/server/reviews.ts';
import { submitDraft } from '../../lib/server/submission.ts';
import {
  CHANGE,
  codeOf,
  type House,
  importDraft,
  must,
  NAMES,
  openHouse,
  PROCEDURE_ID,
  reword,
  rolesOf,
  signThrough,
  write,
} from './house.ts';

let house: House;
let draft: string;
let candidate: string;
beforeAll(async () => {
  house = await openHouse();
  const { drafter } = house.people;
  await signThrough(house, (await importDraft(drafter)).draftId);
  draft = (await must(startDraft(drafter, PROCEDURE_ID, CHANGE))).draftId;
  await write(drafter, draft, reword('Both hear it. '));
  candidate = (await must(submitDraft(drafter, draft, ''))).candidateId;
});
afterAll(() => house.close());

const keep = (weight: number, note = 'the middle of the envelope') => ({
  candidateId: candidate,
  conditions: { weight },
  note,
});

describe('what the screen is given', () => {
  test('a draft and a candidate over the issue before them, an issue over nothing', async () => {
    const { drafter, captain, line } = house.people;
    const first = await must(openFlight(drafter, { draft }));
    expect([first.kind, first.name, first.other?.name, first.may.keep]).toEqual(['draft', 'draft 3', 'issue 1', false]);
    expect(first.sheet?.revision).toBe('A');
    expect(first.library?.aerodromes.length).toBeGreaterThan(0);
    const second = await must(openFlight(captain, { candidate }));
    expect([second.kind, second.other?.name, second.may.keep]).toEqual(['candidate', 'issue 1', true]);
    expect(second.procedure.steps[0]!.label).not.toBe('');
    const third = await must(openFlight(line, { procedure: PROCEDURE_ID, issue: 1 }));
    expect([third.kind, third.name, third.other]).toEqual(['issue', 'issue 1', null]);
  });

  test.each(NAMES)('drafts and candidates only for those who read them: %s', async (name) => {
    const roles = rolesOf(name);
    const reads = roles.some((role) => /technical|training|standards|auditor/.test(role));
    expect(await codeOf(openFlight(house.people[name], { draft }))).toBe(reads ? 'done' : 'not-permitted');
    const decides = reads || roles.some((role) => role === 'approver');
    expect(await codeOf(openFlight(house.people[name], { candidate }))).toBe(decides ? 'done' : 'not-permitted');
    expect(await codeOf(openFlight(house.people[name], { procedure: PROCEDURE_ID, issue: 1 }))).toBe('done');
  });

  test('nothing of another operator, nothing that is not there', async () => {
    const { drafter } = house.people;
    for (const subject of [{ draft }, { candidate }, { procedure: PROCEDURE_ID, issue: 1 }]) {
      expect(await codeOf(openFlight(house.stranger, subject))).toBe('unknown');
    }
    expect(await codeOf(openFlight(drafter, { procedure: PROCEDURE_ID, issue: 9 }))).toBe('unknown');
    expect(await codeOf(openFlight(drafter, { draft: 'a\u0000' }))).toBe('unknown');
  });
});

describe('runs kept with a candidate', () => {
  test('flown by the server, recorded, and the same when flown again', async () => {
    const { drafter, captain, auditor } = house.people;
    const kept = await must(keepFlight(drafter, keep(58_000)));
    expect(kept.engine).toBe(FLIGHT_VERSION);
    expect(kept.figures.length).toBeGreaterThan(5);
    const [shown] = await must(keptFlights(captain, candidate));
    expect(shown).toEqual(kept);

    const open = await must(openFlight(captain, { candidate }));
    expect(open.kept).toEqual([kept]);
    const sheet = readSheet(open.sheet!.content);
    if (!sheet.ok) throw new Error('the sheet does not read');
    const facts = { sheet: sheet.value, policy: open.policy! };
    const again = flyProcedure(open.procedure, facts, kept.conditions, settingsFor(open.procedure, sheet.value));
    expect(figuresOf(open.procedure, again)).toEqual(kept.figures);

    const { lines } = await must(readRecord(auditor, {}));
    expect(lines[0]).toMatchObject({
      act: 'flight kept',
      body: { run: kept.runId, candidate, engine: FLIGHT_VERSION },
    });
    expect(await must(verifyRecord(auditor))).toMatchObject({ ok: true });
  });

  test('not without a reason, not outside the sheet, not once it was decided', async () => {
    const { drafter, captain, line } = house.people;
    expect(await codeOf(keepFlight(drafter, keep(58_000, ' \u0000 ')))).toBe('reason-too-thin');
    const heavy = await keepFlight(drafter, keep(90_000));
    expect(heavy).toMatchObject({ ok: false, error: { code: 'not-understood' } });
    expect(heavy.ok || heavy.error.details.join()).toContain('outside the sheet');
    expect(await codeOf(keepFlight(line, keep(58_000)))).toBe('not-permitted');
    expect(await codeOf(keepFlight(drafter, { ...keep(58_000), candidateId: 'ca_none' }))).toBe('unknown');
    expect(await must(keptFlights(drafter, candidate))).toHaveLength(1);
    await must(sendBack(captain, candidate, 'The order of two steps is not the one that was trained.'));
    expect(await codeOf(keepFlight(drafter, keep(58_000)))).toBe('not-waiting');
    expect((await must(openFlight(drafter, { candidate }))).may.keep).toBe(false);
  });
});
