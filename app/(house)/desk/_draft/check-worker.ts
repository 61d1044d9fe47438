// The checks beside the page: a web worker that is sent a procedure with its sheet and policy and answers with what was
// found. The server asks the same rules again at submission; nothing decided here is taken on trust.
import { type Checked, checkProcedure } from '../../../../lib/check/check.ts';
import type { Facts } from '../../../../lib/check/facts.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';

/** `facts` may be left out when they are those of the question before: a sheet is large, a keystroke is small. */
export type CheckQuestion = { readonly id: number; readonly procedure: Procedure; readonly facts?: Partial<Facts> };
/** `took` in ms. `failed`: the check as a whole broke; the page says so and keeps what it showed. */
export type CheckAnswer =
  | { readonly id: number; readonly checked: Checked; readonly took: number }
  | { readonly id: number; readonly failed: string };

type Scope = {
  postMessage: (answer: CheckAnswer) => void;
  addEventListener: (type: 'message', hear: (event: MessageEvent<CheckQuestion>) => void) => void;
};

const scope = self as unknown as Scope;
let facts: Partial<Facts> = {};

scope.addEventListener('message', ({ data }) => {
  try {
    facts = data.facts ?? facts;
    const began = performance.now();
    const checked = checkProcedure(data.procedure, facts);
    scope.postMessage({ id: data.id, checked, took: performance.now() - began });
  } catch (error) {
    scope.postMessage({ id: data.id, failed: error instanceof Error ? error.message : String(error) });
  }
});
