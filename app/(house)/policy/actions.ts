'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { addPolicyVersion } from '../../../lib/server/policies.ts';
import { policyFrom } from './policy-fields.ts';

const schema = z.looseObject({ reason: z.string().trim().min(1, 'say why') });

export const addVersion = action(schema, (viewer, { reason, ...typed }) =>
  addPolicyVersion(viewer, { content: policyFrom(typed), reason }),
);
