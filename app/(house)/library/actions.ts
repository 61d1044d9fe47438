'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { importLibraryFile } from '../../../lib/server/library.ts';

const schema = z.object({ text: z.string().min(1, 'choose a file or paste its text'), name: z.string() });

export const bringIn = action(schema, (viewer, input) => importLibraryFile(viewer, input));
