// The self-check beside the page: a web worker that explores the table on every standard, so that nobody's typing waits.
import type { ModeSet } from '../../../../lib/aircraft/mode-set.ts';
import { type TableAnswer, tableAnswer } from './table-answer.ts';

export type TableQuestion = { readonly modes: ModeSet };
/** `took` in ms. */
export type TableReply = { readonly answer: TableAnswer; readonly took: number } | { readonly failed: string };

type Scope = {
  postMessage: (reply: TableReply) => void;
  addEventListener: (type: 'message', hear: (event: MessageEvent<TableQuestion>) => void) => void;
};
const scope = self as unknown as Scope;

scope.addEventListener('message', ({ data }) => {
  try {
    const began = performance.now();
    const answer = tableAnswer(data.modes);
    scope.postMessage({ answer, took: performance.now() - began });
  } catch (error) {
    scope.postMessage({ failed: error instanceof Error ? error.message : String(error) });
  }
});
