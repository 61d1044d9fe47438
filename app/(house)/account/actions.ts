'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { changePassword } from '../../../lib/server/people.ts';

const schema = z
  .object({ old: z.string(), new: z.string(), again: z.string() })
  .refine((typed) => typed.new === typed.again, { path: ['again'], message: 'is not the same as the new password' });

export const renew = action(schema, (viewer, input) => changePassword(viewer, { old: input.old, new: input.new }));
