// The explorer beside the page: a web worker that flies the procedure as written and answers for the step at hand, so that
// nobody's typing waits for it.
import type { ModeSet } from '../../../../lib/aircraft/mode-set.ts';
import type { Flights } from '../../../../lib/mode/flights.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import { flyAsWritten, type ModeAnswer, modeAnswer } from './mode-answer.ts';

/** What is left out is that of the question before: another step of the same text needs no new flight. */
export type ModeQuestion = { readonly step: string; readonly procedure?: Procedure; readonly modes?: ModeSet };
/** `answer` null: the procedure has no such step. */
export type ModeReply = { readonly answer: ModeAnswer | null } | { readonly failed: string };

type Scope = {
  postMessage: (reply: ModeReply) => void;
  addEventListener: (type: 'message', hear: (event: MessageEvent<ModeQuestion>) => void) => void;
};

const scope = self as unknown as Scope;
let procedure: Procedure | undefined;
let modes: ModeSet | undefined;
let flights: Flights | undefined;

scope.addEventListener('message', ({ data }) => {
  try {
    if (data.procedure || data.modes) flights = undefined;
    procedure = data.procedure ?? procedure;
    modes = data.modes ?? modes;
    if (!procedure || !modes) throw new Error('the first question brings a procedure and a mode table');
    flights ??= flyAsWritten(modes, procedure);
    scope.postMessage({ answer: modeAnswer(flights, procedure, data.step) });
  } catch (error) {
    scope.postMessage({ failed: error instanceof Error ? error.message : String(error) });
  }
});
