// What comes from outside while a procedure is flown: the radio calls, the cabin calls, an alert. Each takes pilots and the voice
// away for as long as the operator's policy says, before anything of theirs that has not begun.
import type { Policy } from '../policy/policy.ts';
import type { Duty } from './timeline.ts';

export const INTERRUPTIONS = ['radio', 'cabin', 'alert'] as const;
export type InterruptionKind = (typeof INTERRUPTIONS)[number];
/** `at`: s from the first moment flown. */
export type Interruption = { readonly id: string; readonly kind: InterruptionKind; readonly at: number };

/** What each of them is taken to be; `sayInterruption` for the screen. */
const WORDS: Readonly<Record<InterruptionKind, string>> = {
  radio: 'the controller calls, PM answers',
  cabin: 'the cabin calls, PM answers',
  alert: 'an alert: both look, PM reads it aloud, PF confirms',
};
export const sayInterruption = (kind: InterruptionKind): string => WORDS[kind];

/** Whether a duty belongs to an interruption, and to which. */
export const interruptionOf = ({ id }: Duty): string | null => /^interruption (\S+) /.exec(id)?.[1] ?? null;

export function interruptionDuties(all: readonly Interruption[], { durations }: Policy): readonly Duty[] {
  return all.flatMap(({ id, kind, at }) => {
    const duty = (part: string, who: Duty['who'], does: string, takes: number, more: Partial<Duty> = {}): Duty => ({
      ...{ id: `interruption ${id} ${part}`, who, does, takes, speaks: 0, at, follows: [], lag: 0 },
      ...{ order: 'first', breath: null, deadline: null },
      ...more,
    });
    const behind = (...parts: readonly string[]) => ({
      at: null,
      follows: parts.map((part) => `interruption ${id} ${part}`),
    });
    if (kind !== 'alert') return [duty('call', 'PM', WORDS[kind], durations.radio)];
    return [
      duty('look PF', 'PF', 'looks at the alert', durations.reaction, { speaks: null }),
      duty('look PM', 'PM', 'looks at the alert', durations.reaction, { speaks: null }),
      duty('read', 'PM', 'reads the alert aloud', durations.challengeResponse / 2, behind('look PF', 'look PM')),
      duty('confirm', 'PF', 'confirms', durations.challengeResponse / 2, behind('read')),
    ];
  });
}
