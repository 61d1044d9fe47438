'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { recommend, sendBack } from '../../../lib/server/reviews.ts';
import { refuseCandidate, signCandidate } from '../../../lib/server/signing.ts';
import { withdrawCandidate } from '../../../lib/server/submission.ts';

const why = z.object({ candidateId: z.string(), reason: z.string().trim() });
const opinion = why.extend({
  riskNote: z.string().trim(),
  statement: z.string().trim().min(1, 'say what you reviewed'),
});
const signature = z.object({
  candidateId: z.string(),
  sha256: z.string(),
  password: z.string().min(1, 'type your password'),
  /** `2026-11-25T06:00`, taken as UTC. */
  effectiveFrom: z.string().transform((at) => (at ? new Date(`${at}Z`).toISOString() : null)),
});

export const back = action(why, (viewer, input) => sendBack(viewer, input.candidateId, input.reason));
export const refuse = action(why, (viewer, input) => refuseCandidate(viewer, input.candidateId, input.reason));
export const withdraw = action(why, (viewer, input) => withdrawCandidate(viewer, input.candidateId, input.reason));
export const commend = action(opinion, (viewer, { candidateId, ...input }) => recommend(viewer, candidateId, input));
export const sign = action(signature, (viewer, { candidateId, ...input }) => signCandidate(viewer, candidateId, input));
