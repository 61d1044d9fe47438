// How a page arrives at what it shows: who is here, and an answer or the screen that says why not.
import { forbidden, notFound, redirect } from 'next/navigation';
import type { Result } from '../../lib/base/result.ts';
import type { Problem } from '../../lib/server/errors.ts';
import { viewer } from '../../lib/server/viewer.ts';
import type { Viewer } from '../../lib/server/within.ts';

/** The viewer, or the sign-in page, which leads back to `path`. */
export async function signedIn(path: string): Promise<Viewer> {
  return (await viewer()) ?? redirect(`/sign-in?next=${encodeURIComponent(path)}`);
}

/** The value, or the screen for the refusal. What nobody foresaw goes to the error screen. */
export function shown<T>(answer: Result<T, Problem>): T {
  if (answer.ok) return answer.value;
  switch (answer.error.code) {
    case 'signed-out':
      return redirect('/sign-in');
    case 'not-permitted':
      return forbidden();
    case 'unknown':
    case 'not-in-force':
      return notFound();
    default:
      throw new Error(answer.error.sentence);
  }
}
