// Fleets, tails with their dated options, and the revisions of the type data sheet.
import type { Answered, Viewer } from './within.ts';

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

export function fleets(_viewer: Viewer): Answered<readonly FleetLine[]> {
  throw new Error('not ready');
}

export function addFleet(_viewer: Viewer, _input: { name: string; type: string }): Answered<{ fleetId: string }> {
  throw new Error('not ready');
}

export function addTail(
  _viewer: Viewer,
  _input: { fleetId: string; registration: string; standard: string; from: string },
): Answered<null> {
  throw new Error('not ready');
}

/** The tail's standard changes when maintenance releases it: from `from` (ISO), not in the past. */
export function releaseTail(
  _viewer: Viewer,
  _input: { registration: string; standard: string; from: string },
): Answered<null> {
  throw new Error('not ready');
}

export function sheetRevisions(_viewer: Viewer): Answered<readonly RevisionLine[]> {
  throw new Error('not ready');
}

export function readSheetRevision(
  _viewer: Viewer,
  _revisionId: string,
): Answered<RevisionLine & { readonly content: unknown }> {
  throw new Error('not ready');
}

/** A new revision from a file (YAML or JSON) in the documented format. */
export function importSheetRevision(
  _viewer: Viewer,
  _input: { text: string; name: string },
): Answered<{ revisionId: string }> {
  throw new Error('not ready');
}
