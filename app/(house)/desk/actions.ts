'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { createProcedure, importProcedureFile, startDraft } from '../../../lib/server/drafts.ts';

const change = {
  reason: z.string().trim().min(1, 'say why'),
  source: z.string().trim(),
  riskNote: z.string().trim(),
  dueOn: z.string().transform((day) => day || null),
};
const pick = ({
  reason,
  source,
  riskNote,
  dueOn,
}: {
  reason: string;
  source: string;
  riskNote: string;
  dueOn: string | null;
}) => ({
  reason,
  source,
  riskNote,
  dueOn,
});

const createSchema = z.object({ title: z.string().trim().min(1, 'give it a name'), ...change });
const startSchema = z.object({ procedureId: z.string(), ...change });
const importSchema = z.object({
  text: z.string().min(1, 'choose a file or paste its text'),
  name: z.string(),
  ...change,
});

export const create = action(createSchema, (viewer, input) =>
  createProcedure(viewer, { title: input.title, change: pick(input) }),
);
export const start = action(startSchema, (viewer, input) => startDraft(viewer, input.procedureId, pick(input)));
export const bringIn = action(importSchema, (viewer, input) =>
  importProcedureFile(viewer, { text: input.text, name: input.name, change: pick(input) }),
);
