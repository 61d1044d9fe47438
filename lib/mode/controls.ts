// From a step to the rules that its hand raises, by the words of the sheet.
import type { ModeSet } from '../aircraft/mode-set.ts';
import type { Step } from '../procedure/procedure.ts';

type Control = NonNullable<ModeSet['controls']>[number];

const standsIn = (name: string, text: string): boolean => {
  const at = text.indexOf(name);
  if (at < 0) return false;
  const word = /[\w-]/;
  return !word.test(text[at - 1] ?? ' ') && !word.test(text[at + name.length] ?? ' ');
};

/** The controls that the step moves. One whose value is named too goes before those without. */
export function controlsOf(modes: ModeSet, step: Step): readonly Control[] {
  const near = (modes.controls ?? []).filter(
    (control) => control.verbs.includes(step.verb) && standsIn(control.object, step.object),
  );
  const value = step.value.trim().toLowerCase();
  const exact = near.filter((control) => control.value !== undefined && value.startsWith(control.value.toLowerCase()));
  return exact.length > 0 ? exact : near.filter((control) => control.value === undefined);
}

/** Indices of the rules that a hand of this step raises; null where it touches nothing that the guidance hears of. */
export function rulesOf(modes: ModeSet, step: Step): readonly number[] | null {
  const ids = controlsOf(modes, step).flatMap((control) => control.rules);
  const rules = modes.rules.flatMap((rule, index) => (ids.includes(rule.id) ? [index] : []));
  return rules.length === 0 ? null : rules;
}
