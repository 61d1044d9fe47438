// The checks whose first stage is publication, asked in the act of signing. Those of earlier stages were asked at
// submission of the same bytes, and stand with the candidate.
import { checkProcedure } from '../check/check.ts';
import type { Finding, NotChecked } from '../check/finding.ts';
import type { Governance } from '../check/governance.ts';
import { rulesUpTo } from '../check/stage.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Tx } from './db.ts';
import { Refused } from './errors.ts';
import { factsFor } from './facts.ts';
import type { Standing } from './permit.ts';

export type AtPublication = { readonly findings: readonly Finding[]; readonly notChecked: readonly NotChecked[] };

export async function checkPublication(
  tx: Tx,
  standing: Standing,
  procedure: Procedure,
  governance: Governance,
): Promise<AtPublication> {
  const facts = await factsFor(tx, standing, procedure, 'submitted');
  const rules = rulesUpTo('publication').filter((rule) => rule.stage === 'publication');
  const { findings, notChecked, crashed } = checkProcedure(procedure, { ...facts, governance }, rules);
  if (crashed.length > 0) {
    throw new Refused(
      'check-crashed',
      crashed.map((crash) => `Check ${crash.number} ${crash.check}: ${crash.error}`),
    );
  }
  return { findings, notChecked };
}

/** A STOP holds the signature. What is to be answered is read by the signer and bound by the signature. */
export function refuseStops({ findings }: AtPublication): void {
  const stops = findings.filter((finding) => finding.severity === 'STOP');
  if (stops.length > 0)
    throw new Refused(
      'stop-open',
      stops.map((finding) => finding.message),
    );
}
