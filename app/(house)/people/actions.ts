'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { addPerson, deactivate, revokeSessions, setRoles } from '../../../lib/server/people.ts';
import { ROLES } from '../../../lib/server/roles.ts';

const roles = z.array(z.enum(ROLES)).default([]);
const addSchema = z.object({
  name: z.string().trim().min(1, 'say who it is'),
  signInName: z.string().trim().min(1, 'needed to sign in'),
  title: z.string().trim(),
  password: z.string(),
  'roles[]': roles,
});
const rolesSchema = z.object({ personId: z.string(), 'roles[]': roles });
const personSchema = z.object({ personId: z.string() });

export const add = action(addSchema, (viewer, { 'roles[]': held, ...input }) =>
  addPerson(viewer, { ...input, roles: held }),
);
export const giveRoles = action(rolesSchema, (viewer, input) => setRoles(viewer, input.personId, input['roles[]']));
export const endAccess = action(personSchema, (viewer, input) => deactivate(viewer, input.personId));
export const endSessions = action(personSchema, (viewer, input) => revokeSessions(viewer, input.personId));
