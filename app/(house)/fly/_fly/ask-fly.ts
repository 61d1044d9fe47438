// The three workers and the questions to them. Of questions for the slider only the newest counts: while one is under way the
// next one waits, and one that is overtaken is never sent.
import type { Interruption } from '../../../../lib/flight/interruptions.ts';
import type { Given, Ground } from './fly-one.ts';
import type { FlyAnswer, FlyQuestion, Sweeping } from './fly-worker.ts';

type Hear = (answer: FlyAnswer) => void;
type Body<Q> = Q extends unknown ? Omit<Q, 'id'> : never;

/** One worker: `ask` sends, and each answer comes with the number that `ask` gave. */
function open(ground: Ground, hear: Hear) {
  const worker = new Worker(new URL('./fly-worker.ts', import.meta.url), { type: 'module' });
  let last = 0;
  const ask = (body: Body<FlyQuestion>): number => {
    last += 1;
    worker.postMessage({ id: last, ...body } satisfies FlyQuestion);
    return last;
  };
  worker.onmessage = ({ data }: MessageEvent<FlyAnswer>) => hear(data);
  worker.onerror = () => hear({ id: last, kind: 'failed', says: 'The flight could not be started in this browser.' });
  ask({ kind: 'ground', ground });
  return { ask, end: () => worker.terminate(), newest: () => last };
}

export type Flying = {
  readonly given: Given;
  readonly interruptions: readonly Interruption[];
  readonly against: boolean;
};

/** For the slider: one flight after the other, always the newest. */
export function flyer(ground: Ground, hear: (answer: FlyAnswer, of: Flying) => void) {
  let waiting: Flying | null = null;
  let under: Flying | null = null;
  const worker = open(ground, (answer) => {
    const of = under;
    under = null;
    if (of !== null) hear(answer, of);
    send();
  });
  const send = (): void => {
    if (waiting === null || under !== null) return;
    under = waiting;
    waiting = null;
    worker.ask({ kind: 'fly', ...under });
  };
  return {
    fly(wanted: Flying): void {
      waiting = wanted;
      send();
    },
    end: worker.end,
  };
}

/** For what takes longer. An answer to an older question of its kind is passed over. */
export function searcher(ground: Ground, hear: Hear) {
  const asked = { near: 0, sweep: 0 };
  const worker = open(ground, (answer) => {
    if (answer.kind === 'near' && answer.id !== asked.near) return;
    if (['progress', 'swept', 'stopped'].includes(answer.kind) && answer.id !== asked.sweep) return;
    hear(answer);
  });
  return {
    near(given: Given, interruptions: readonly Interruption[]): void {
      asked.near = worker.ask({ kind: 'near', given, interruptions });
    },
    sweep(wanted: Sweeping): void {
      asked.sweep = worker.ask({ kind: 'sweep', ...wanted });
    },
    stop(): void {
      worker.ask({ kind: 'stop' });
    },
    /** Gives the number by which its answer is known. */
    again: (given: Given): number => worker.ask({ kind: 'again', given }),
    end: worker.end,
  };
}

export function checker(ground: Ground, hear: Hear) {
  const worker = open(ground, hear);
  worker.ask({ kind: 'check' });
  return { end: worker.end };
}
