// One worker of checks and the questions to it: one at a time, always the newest text; an answer to an older text is passed
// over. The slower worker is asked when the typing has rested, and a question that is overtaken meanwhile is never sent.
import type { Facts } from '../../../../lib/check/facts.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import type { CheckAnswer, CheckQuestion, Pace } from './check-worker.ts';

/** ms without a change before the slower checks are asked. */
const REST: Readonly<Record<Pace, number>> = { atOnce: 0, atRest: 250 };

export type AskChecks = {
  readonly ask: (procedure: Procedure, facts: Partial<Facts>) => void;
  readonly end: () => void;
};

export function askChecks(pace: Pace, hear: (of: Procedure, answer: CheckAnswer) => void): AskChecks {
  const worker = new Worker(new URL('./check-worker.ts', import.meta.url), { type: 'module' });
  let newest: { readonly procedure: Procedure; readonly facts: Partial<Facts> } | null = null;
  let told: Partial<Facts> | null = null;
  let asked = 0;
  let sent: Procedure | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const send = (): void => {
    if (newest === null || sent !== null) return;
    const { procedure, facts } = newest;
    newest = null;
    sent = procedure;
    asked += 1;
    const question: CheckQuestion = { id: asked, pace, procedure, ...(told === facts ? {} : { facts }) };
    told = facts;
    worker.postMessage(question);
  };
  const soon = (): void => {
    clearTimeout(timer);
    if (REST[pace] === 0) send();
    else timer = setTimeout(send, REST[pace]);
  };
  worker.onmessage = ({ data }: MessageEvent<CheckAnswer>) => {
    const of = sent;
    sent = null;
    if (of !== null && data.id === asked && newest === null) hear(of, data);
    else soon();
  };
  return {
    ask(procedure, facts) {
      newest = { procedure, facts };
      soon();
    },
    end() {
      clearTimeout(timer);
      worker.terminate();
    },
  };
}
