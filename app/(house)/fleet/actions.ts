'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { addFleet, addTail, releaseTail } from '../../../lib/server/aircraft.ts';

const word = z.string().trim().min(1, 'is needed').max(60);
/** The field gives no zone; the house counts in UTC. */
const from = z
  .string()
  .min(1, 'say since when')
  .transform((typed) => `${typed}Z`);

const fleetSchema = z.object({ name: word, type: word });
const tailSchema = z.object({ fleetId: z.string(), registration: word, standard: word, from });
const releaseSchema = z.object({ registration: word, standard: word, from });

export const openFleet = action(fleetSchema, (viewer, input) => addFleet(viewer, input));
export const takeIn = action(tailSchema, (viewer, input) => addTail(viewer, input));
export const release = action(releaseSchema, (viewer, input) => releaseTail(viewer, input));
