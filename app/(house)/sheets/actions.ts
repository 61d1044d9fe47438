'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { importSheetRevision } from '../../../lib/server/aircraft.ts';

const schema = z.object({ text: z.string().min(1, 'choose a file or paste its text'), name: z.string() });

export const bringIn = action(schema, (viewer, input) => importSheetRevision(viewer, input));
