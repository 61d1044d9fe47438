// The demo world's sheet and policy, read through the code that reads a user's own.
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { readSheet, type Sheet } from '../../lib/aircraft/sheet.ts';
import type { Facts } from '../../lib/check/facts.ts';
import { governanceOn } from '../../lib/check/governance.ts';
import type { Policy } from '../../lib/policy/policy.ts';
import { readPolicy } from '../../lib/policy/policy.ts';
import { seedFleet, seedLibrary } from './seed.ts';

const data = (path: string): unknown => parse(readFileSync(new URL(`../../seed/${path}`, import.meta.url), 'utf8'));

function sheetOf(path: string): Sheet {
  const read = readSheet(data(path));
  if (!read.ok)
    throw new Error(`${path}: ${read.error.map((problem) => `${problem.at} ${problem.message}`).join('; ')}`);
  return read.value;
}

function policyOf(path: string): Policy {
  const read = readPolicy(data(path));
  if (!read.ok)
    throw new Error(`${path}: ${read.error.map((problem) => `${problem.at} ${problem.message}`).join('; ')}`);
  return read.value;
}

export const tn182: Sheet = sheetOf('aircraft/tn-182-a.yaml');
export const housePolicy: Policy = policyOf('library/policy.yaml');

/** What the rules of a case are given unless it says otherwise: the demo world, no other procedure, nothing of a change. */
export const houseFacts: Facts = {
  sheet: tn182,
  policy: housePolicy,
  library: seedLibrary(),
  others: [],
  fleet: seedFleet(),
  governance: governanceOn('2026-11-25'),
};

/** The sheet with other limits, as a revision would bring: VFE by detent, kt. */
export function withLimits(vfe: Readonly<Record<string, number>>): Sheet {
  const detents = tn182.detents.map((detent) => {
    const value = vfe[detent.name];
    return value === undefined || detent.vfe === null ? detent : { ...detent, vfe: { ...detent.vfe, value } };
  });
  return { ...tn182, revision: 'trial', detents };
}
