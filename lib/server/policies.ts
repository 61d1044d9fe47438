// The operator's thresholds, durations and words: versions, never edited in place.

import { canonicalText } from '../base/canonical.ts';
import { type Policy, readPolicy } from '../policy/policy.ts';
import { Refused } from './errors.ts';
import { namesOf } from './names.ts';
import { permit } from './permit.ts';
import { enter } from './record-entry.ts';
import { said } from './said.ts';
import { sha256Hex } from './sha256.ts';
import { type Answered, type Viewer, within } from './within.ts';

export type PolicyLine = {
  readonly version: number;
  readonly madeBy: string;
  readonly madeAt: string;
  readonly reason: string;
  readonly policy: Policy;
};

export function policies(viewer: Viewer): Answered<readonly PolicyLine[]> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'read in force');
    const rows = await tx.policyVersion.findMany({
      where: { operatorId: standing.operatorId },
      orderBy: { version: 'desc' },
    });
    const nameOf = await namesOf(
      tx,
      rows.map((row) => row.madeById),
    );
    return rows.map((row) => ({
      version: row.version,
      madeBy: nameOf(row.madeById),
      madeAt: row.madeAt.toISOString(),
      reason: row.reason,
      policy: JSON.parse(row.content) as Policy,
    }));
  });
}

/** `content` goes through `readPolicy`; what it cannot read comes back as details. */
export function addPolicyVersion(
  viewer: Viewer,
  input: { content: unknown; reason: string },
): Answered<{ version: number }> {
  return within(viewer, async (tx, standing) => {
    permit(standing, 'manage policy');
    const { operatorId, personId, at } = standing;
    const read = readPolicy(input.content);
    if (!read.ok)
      throw new Refused(
        'file-unreadable',
        read.error.map((one) => `${one.at}: ${one.message}`),
      );
    const reason = said(input.reason);
    if (reason === '') throw new Refused('reason-too-thin');
    const last = await tx.policyVersion.findFirst({ where: { operatorId }, orderBy: { version: 'desc' } });
    const version = (last?.version ?? 0) + 1;
    const content = canonicalText(read.value);
    const sha256 = sha256Hex(new TextEncoder().encode(content));
    await tx.policyVersion.create({
      data: { operatorId, version, content, sha256, reason, madeById: personId, madeAt: at },
      select: { version: true },
    });
    await enter(tx, standing, 'policy version made', `policy ${version}`, { version, sha256, reason });
    return { version };
  });
}
