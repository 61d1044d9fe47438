// Which part of the aircraft an event speaks of, and by what the type shows it.
import type { Sheet } from '../aircraft/sheet.ts';
import { kept } from './kept.ts';

/** Parts that move or fail where no pilot looks: each with the stems by which an indication of it is known. */
const PARTS: readonly (readonly [RegExp, RegExp])[] = [
  [/\b(flaps?|slats?)\b/i, /\b(flaps?|slats?)\b/i],
  [/\b(landing )?gear\b/i, /\bgear\b/i],
  [/\b(speed ?brakes?|(ground )?spoilers?)\b/i, /\b(speed ?brakes?|spoilers?)\b/i],
  [/\b(engines?|spool\w*)\b/i, /\b(engines?|thrust)\b/i],
  [/\b(valves?)\b/i, /\bvalves?\b/i],
  [/\b(pumps?)\b/i, /\bpumps?\b/i],
  [/\b(generators?)\b/i, /\b(generators?|electric\w*)\b/i],
  [/\b(hydraulics?)\b/i, /\bhydraulics?\b/i],
  [/\b(doors?)\b/i, /\bdoors?\b/i],
];

export const partIn = kept((text: string): RegExp | null => PARTS.find(([part]) => part.test(text))?.[1] ?? null);

/** The name of what shows the part: an indication, else an alert, else a handle that is seen itself; null: nothing does. */
export function shownBy(sheet: Sheet, part: RegExp): string | null {
  const all = [...sheet.indications, ...sheet.alerts, ...sheet.panel].map((each) => each.name);
  return all.find((name) => part.test(name)) ?? null;
}
