import type { Speed, Verdict } from './speed-question.ts';

export type Failure = {
  readonly verdict: Extract<Verdict, { kind: 'fails' }>;
  readonly speed: Speed;
  readonly other: Speed;
};

/** Of all that fails at one step, the worst: one finding is enough to mend, and the mend is asked again. */
export function worst(): { readonly found: Failure | null; readonly take: (failure: Failure) => void } {
  let found: Failure | null = null;
  return {
    get found() {
      return found;
    },
    take(failure) {
      if (found === null || failure.verdict.by > found.verdict.by) found = failure;
    },
  };
}
