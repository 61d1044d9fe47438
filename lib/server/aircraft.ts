// Fleets, tails with their dated options, and the revisions of the type data sheet.

import { parse } from 'yaml';
import { readSheet } from '../aircraft/sheet.ts';
import { canonicalText } from '../base/canonical.ts';
import { Refused } from './errors.ts';
import { newId } from './ids.ts';
import { namesOf } from './names.ts';
import { permit } from './permit.ts';
import { enter } from './record-entry.ts';
import { said } from './said.ts';
import { sha256Hex } from './sha256.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type FleetLine = {
  readonly fleetId: string;
  readonly name: string;
  readonly type: string;
  readonly tails: readonly {
    readonly registration: string;
    readonly options: readonly { readonly option: string; readonly value: string; readonly from: string }[];
  }[];
};

export type RevisionLine = {
  readonly id: string;
  readonly type: string;
  readonly revision: string;
  readonly sha256: string;
  readonly importedBy: string;
  readonly importedAt: string;
  readonly sources: readonly string[];
};

export function fleets(viewer: Viewer): Answered<readonly FleetLine[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    const rows = await tx.fleet.findMany({
      where: { operatorId: standing.operatorId },
      orderBy: { name: 'asc' },
      include: {
        tails: { orderBy: { registration: 'asc' }, include: { options: { orderBy: { heldFrom: 'asc' } } } },
      },
    });
    return rows.map((fleet) => ({
      fleetId: fleet.id,
      name: fleet.name,
      type: fleet.type,
      tails: fleet.tails.map((tail) => ({
        registration: tail.registration,
        options: tail.options.map(({ option, value, heldFrom }) => ({ option, value, from: heldFrom.toISOString() })),
      })),
    }));
  });
}

export function addFleet(viewer: Viewer, input: { name: string; type: string }): Answered<{ fleetId: string }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage fleet');
    const { operatorId } = standing;
    const fleetId = newId('fl');
    const data = { name: said(input.name), type: said(input.type) };
    await tx.fleet.create({ data: { operatorId, id: fleetId, ...data } });
    await enter(tx, standing, 'fleet added', fleetId, data);
    return { fleetId };
  });
}

/** `from`: since when the tail has that standard; it may lie in the past. */
export function addTail(
  viewer: Viewer,
  input: { fleetId: string; registration: string; standard: string; from: string },
): Answered<null> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage fleet');
    const { operatorId, personId } = standing;
    const { fleetId } = input;
    const registration = said(input.registration);
    const standard = said(input.standard);
    const fleet = await tx.fleet.findUnique({ where: { operatorId_id: { operatorId, id: fleetId } } });
    if (!fleet) throw new Refused('unknown');
    const heldFrom = timeOf(input.from);
    await tx.tail.create({ data: { operatorId, registration, fleetId } });
    await tx.tailOption.create({
      data: { operatorId, registration, option: 'standard', value: standard, heldFrom, releasedById: personId },
    });
    const told = { fleet: fleetId, option: 'standard', value: standard, from: heldFrom.toISOString() };
    await enter(tx, standing, 'tail added', registration, told);
    return null;
  });
}

/** The tail's standard changes when maintenance releases it, not on the day it was planned for. */
export function releaseTail(
  viewer: Viewer,
  input: { registration: string; standard: string; from: string },
): Answered<null> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage fleet');
    const { operatorId, personId } = standing;
    const { registration, standard } = input;
    const tail = await tx.tail.findUnique({ where: { operatorId_registration: { operatorId, registration } } });
    if (!tail) throw new Refused('unknown');
    const heldFrom = timeOf(input.from);
    const last = await tx.tailOption.findFirst({
      where: { operatorId, registration, option: 'standard' },
      orderBy: { heldFrom: 'desc' },
    });
    if (last && last.heldFrom >= heldFrom) throw new Refused('exists-already', [last.heldFrom.toISOString()]);
    await tx.tailOption.create({
      data: { operatorId, registration, option: 'standard', value: standard, heldFrom, releasedById: personId },
    });
    const told = { option: 'standard', value: standard, from: heldFrom.toISOString() };
    await enter(tx, standing, 'tail released', registration, told);
    return null;
  });
}

export function sheetRevisions(viewer: Viewer): Answered<readonly RevisionLine[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    const rows = await tx.sheetRevision.findMany({
      where: { operatorId: standing.operatorId },
      orderBy: { importedAt: 'desc' },
      omit: { content: true },
    });
    const nameOf = await namesOf(
      tx,
      rows.map((row) => row.importedById),
    );
    return rows.map((row) => line(row, nameOf(row.importedById)));
  });
}

export function readSheetRevision(
  viewer: Viewer,
  revisionId: string,
): Answered<RevisionLine & { readonly content: unknown }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    const { operatorId } = standing;
    const row = await tx.sheetRevision.findUnique({ where: { operatorId_id: { operatorId, id: revisionId } } });
    if (!row) throw new Refused('unknown');
    const nameOf = await namesOf(tx, [row.importedById]);
    return { ...line(row, nameOf(row.importedById)), content: JSON.parse(row.content) as unknown };
  });
}

/** A new revision from a file (YAML or JSON) in the documented format. A revision that is there is never written over. */
export function importSheetRevision(
  viewer: Viewer,
  input: { text: string; name: string },
): Answered<{ revisionId: string }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'import sheet');
    const { operatorId, personId, at } = standing;
    const read = readSheet(plain(input.text));
    if (!read.ok)
      throw new Refused(
        'file-unreadable',
        read.error.map((one) => `${one.at}: ${one.message}`),
      );
    const { type, revision, documents } = read.value;
    const content = canonicalText(read.value);
    const sha256 = sha256Hex(new TextEncoder().encode(content));
    const id = newId('sh');
    await tx.sheetRevision.create({
      data: {
        operatorId,
        id,
        type,
        revision,
        content,
        sha256,
        sources: Object.values(documents).map((document) => document.title),
        importedById: personId,
        importedAt: at,
      },
      select: { id: true },
    });
    await enter(tx, standing, 'sheet revision imported', id, { type, revision, sha256 });
    return { revisionId: id };
  });
}

function plain(text: string): unknown {
  try {
    return parse(text, { maxAliasCount: 0 });
  } catch (error) {
    throw new Refused('file-unreadable', [error instanceof Error ? error.message : String(error)]);
  }
}

function timeOf(text: string): Date {
  const time = new Date(text);
  if (Number.isNaN(time.getTime())) throw new Refused('not-understood', ['from: not a time']);
  return time;
}

type Row = {
  readonly id: string;
  readonly type: string;
  readonly revision: string;
  readonly sha256: string;
  readonly importedAt: Date;
  readonly sources: unknown;
};

const line = (row: Row, importedBy: string): RevisionLine => ({
  id: row.id,
  type: row.type,
  revision: row.revision,
  sha256: row.sha256,
  importedBy,
  importedAt: row.importedAt.toISOString(),
  sources: row.sources as string[],
});
