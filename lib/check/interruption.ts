// Where a procedure or a list may be interrupted, and where it can be taken up again.
import type { Checklist } from '../library/library.ts';
import type { Step } from '../procedure/procedure.ts';

/** What comes from outside while a list is being read. */
const OUTSIDE =
  /\b(push-?back|tug|towbar|taxi clearance|de-?icing|engine start|start clearance|ground crew|when cleared)\b/i;
export const HOLD = /\bhold\b/i;

/** Two or more neighbours that may be interrupted, the hold point right behind them among them. */
export function stretches(line: readonly Step[]): readonly (readonly Step[])[] {
  const found: Step[][] = [];
  for (const [index, step] of line.entries()) {
    if (!step.flags.includes('interruptible')) continue;
    const last = found.at(-1);
    if (last !== undefined && last.at(-1) === line[index - 1]) last.push(step);
    else found.push([step]);
  }
  return found
    .filter((stretch) => stretch.length > 1)
    .map((stretch) => [
      ...stretch,
      ...line
        .slice(line.indexOf(stretch.at(-1)!) + 1)
        .slice(0, 1)
        .filter(isHold),
    ]);
}

const isHold = (step: Step): boolean => step.flags.includes('hold');

/** The first item that waits for something outside, with no hold line before it; null: none does. */
export function splitAt({ items }: Checklist): { readonly item: number; readonly words: string } | null {
  for (const [index, { challenge, response }] of items.entries()) {
    const words = OUTSIDE.exec(`${challenge} ${response}`)?.[0];
    if (words === undefined || index === 0 || HOLD.test(challenge)) continue;
    if (!HOLD.test(items[index - 1]!.challenge)) return { item: index + 1, words };
  }
  return null;
}
