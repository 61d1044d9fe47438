// A form's way in: the viewer from the cookie, the input through its schema, the answer as a value. Nothing else.
import type { z } from 'zod';
import { err, type Result } from '../base/result.ts';
import { type Problem, problem, unexpected } from './errors.ts';
import { viewer } from './viewer.ts';
import type { Viewer } from './within.ts';

/** `const sign = action(schema, (viewer, input) => signCandidate(viewer, input.candidateId, input))` in a 'use server' file. */
export function action<Schema extends z.ZodType, T>(
  schema: Schema,
  deed: (viewer: Viewer, input: z.output<Schema>) => Promise<Result<T, Problem>>,
): (input: z.input<Schema>) => Promise<Result<T, Problem>> {
  return async (input) => {
    try {
      const who = await viewer();
      if (!who) return err(problem('signed-out'));
      const read = schema.safeParse(input);
      if (!read.success) {
        const lines = read.error.issues.map((issue) => `${issue.path.join('.') || 'form'}: ${issue.message}`);
        return err(problem('not-understood', lines));
      }
      return await deed(who, read.data);
    } catch (error) {
      return err(unexpected(error));
    }
  };
}
