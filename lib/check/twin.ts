// The manoeuvres that have an engine-out counterpart, and the skeleton of acts by which two texts of one are compared.
import type { Procedure, Step } from '../procedure/procedure.ts';
import { plain } from './names.ts';

export const MANOEUVRES = ['take-off', 'go-around', 'approach', 'landing', 'drift-down'] as const;
export type Manoeuvre = (typeof MANOEUVRES)[number];

export type Twin = {
  readonly title: string;
  /** Acts such as `read mode line`, each once. */
  readonly skeleton: readonly string[];
  /** All words in which a difference could be marked. */
  readonly rationale: string;
};

/** A go-around begins on the approach and is no approach; what follows a take-off is part of it. */
export function manoeuvresOf({ phases, title }: Procedure): readonly Manoeuvre[] {
  if (/\bdrift-?\s?down\b/i.test(title)) return ['drift-down'];
  if (phases.includes('go-around')) return ['go-around'];
  if (phases.includes('take-off')) return ['take-off'];
  return MANOEUVRES.filter((each) => (phases as readonly string[]).includes(each));
}

const MODE_LINE = /\bmode line\b/i;
const CONFIGURATION = /\b(flaps?|gear|slats?)\b/i;

/** What must not be lost on one engine: the reading of the modes, gear and flap, what is called and pressed first. */
export function actOf(step: Step): string | null {
  if (!step.flags.includes('critical')) return null;
  // Who presses and hears the modes read back has them read as well.
  if (MODE_LINE.test(step.object) || (step.verb === 'press' && step.reply !== '')) return 'mode reading';
  const moved = CONFIGURATION.exec(step.object)?.[1];
  if (moved !== undefined && ['move', 'select', 'set'].includes(step.verb))
    return `${plain(moved).replace(/s$/, '')} movement`;
  return step.verb === 'call' && /\bclimb\b/i.test(step.object) ? 'climb call' : null;
}

export function twinOf(procedure: Procedure, steps: readonly Step[]): Twin {
  const acts = steps.map(actOf).filter((act) => act !== null);
  return { title: procedure.title, skeleton: [...new Set(acts)], rationale: plain(procedure.rationale) };
}
