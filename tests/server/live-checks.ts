// The checks as the browser asks them, from what the server sent to the screen.
import { readSheet } from '../../lib/aircraft/sheet.ts';
import { type Checked, checkProcedure } from '../../lib/check/check.ts';
import type { Finding } from '../../lib/check/finding.ts';
import type { OpenDraft } from '../../lib/server/drafts.ts';

export const checksOf = (draft: OpenDraft): readonly Finding[] => checkedOf(draft).findings;

export function checkedOf(draft: OpenDraft): Checked {
  const sheet = draft.sheet && readSheet(draft.sheet.content);
  return checkProcedure(draft.procedure, {
    sheet: sheet?.ok ? sheet.value : null,
    policy: draft.policy?.policy ?? null,
    library: draft.library,
    others: draft.others,
    fleet: draft.fleet,
    governance: draft.governance,
  });
}
