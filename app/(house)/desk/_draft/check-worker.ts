// The checks beside the page: a web worker that is sent a procedure with its facts and answers with what was found. Two of
// them run: one asks the checks that answer while a person types, one those that take longer, so that neither waits for the
// other. The server asks the same rules again at submission; nothing decided here is taken on trust.
import { type Checked, checkProcedure } from '../../../../lib/check/check.ts';
import type { Facts } from '../../../../lib/check/facts.ts';
import { byPace } from '../../../../lib/check/stage.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';

export type Pace = keyof ReturnType<typeof byPace>;
/** `facts` may be left out when they are those of the question before: a sheet is large, a keystroke is small. */
export type CheckQuestion = {
  readonly id: number;
  readonly pace: Pace;
  readonly procedure: Procedure;
  readonly facts?: Partial<Facts>;
};
/** `took` in ms. `failed`: the check as a whole broke; the page says so and keeps what it showed. */
export type CheckAnswer =
  | { readonly id: number; readonly checked: Checked; readonly took: number }
  | { readonly id: number; readonly failed: string };

type Scope = {
  postMessage: (answer: CheckAnswer) => void;
  addEventListener: (type: 'message', hear: (event: MessageEvent<CheckQuestion>) => void) => void;
};

const scope = self as unknown as Scope;
const rules = byPace();
let facts: Partial<Facts> = {};

scope.addEventListener('message', ({ data }) => {
  try {
    facts = data.facts ?? facts;
    const began = performance.now();
    const checked = checkProcedure(data.procedure, facts, rules[data.pace]);
    const took = performance.now() - began;
    performance.measure(`checks ${data.pace}`, { start: began, duration: took });
    scope.postMessage({ id: data.id, checked, took });
  } catch (error) {
    scope.postMessage({ id: data.id, failed: error instanceof Error ? error.message : String(error) });
  }
});
