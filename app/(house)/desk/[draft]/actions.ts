'use server';
import { z } from 'zod';
import { action } from '../../../../lib/server/action.ts';
import { answerFinding, waiveStop } from '../../../../lib/server/answers.ts';
import { exportDraft } from '../../../../lib/server/drafts.ts';
import { submitDraft } from '../../../../lib/server/submission.ts';

const finding = z.object({ draftId: z.string(), check: z.string(), read: z.string(), reason: z.string().trim() });

export const answer = action(finding, (viewer, { draftId, check, read, reason }) =>
  answerFinding(viewer, draftId, { check, read }, reason),
);
export const waive = action(finding.extend({ expiresOn: z.string().min(1, 'choose a day') }), (viewer, input) =>
  waiveStop(
    viewer,
    input.draftId,
    { check: input.check, read: input.read },
    { reason: input.reason, expiresOn: input.expiresOn },
  ),
);
export const submit = action(z.object({ draftId: z.string(), note: z.string().trim() }), (viewer, input) =>
  submitDraft(viewer, input.draftId, input.note),
);
export const asFile = action(z.object({ draftId: z.string() }), (viewer, input) => exportDraft(viewer, input.draftId));
