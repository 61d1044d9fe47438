'use server';
import { z } from 'zod';
import { action } from '../../lib/server/action.ts';
import { acknowledge } from '../../lib/server/reading.ts';

const receipt = z.object({
  registration: z.string(),
  procedureId: z.string(),
  issueNumber: z.number().int(),
  device: z.string().max(200),
});

export const iHaveRead = action(receipt, (viewer, input) => acknowledge(viewer, input));
