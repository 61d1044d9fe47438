// Voices that ask nobody: the aircraft's own, at heights, and the controller's, before a clearance is received.
import { conjuncts } from '../procedure/cue.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import { allSteps } from '../procedure/procedure.ts';
import type { Crew } from './crew-parts.ts';
import type { Duty } from './timeline.ts';
import type { Trace } from './trace.ts';

const FROM_OUTSIDE = /\b(clear(ed|ance)|controller|air traffic|tower|read ?back)\b/i;

export function outsideVoices({ procedure, trace, policy, sheet }: Crew): readonly Duty[] {
  const { radio, speechWordsPerSecond } = policy.durations;
  const gates = new Map(trace.steps.map((one) => [one.step, one.left === '' ? one.gate : null]));
  const controller = allSteps(procedure).flatMap((step): readonly Duty[] => {
    const gate = gates.get(step.id) ?? null;
    const told = conjuncts(parsedCue(step.cue).gate).find((part) => part.kind === 'event');
    if (gate === null || gate <= 0 || told?.kind !== 'event' || !FROM_OUTSIDE.test(told.text)) return [];
    const from = Math.max(0, gate - radio);
    return [voice(`controller: ${told.text}`, `controller ${step.id}`, from, gate - from)];
  });
  const aircraft = sheet.callouts.flatMap((callout): readonly Duty[] => {
    const time = momentOf(callout.when, trace);
    if (time === null) return [];
    return [
      voice(
        `“${callout.words}”`,
        `voice ${callout.words}`,
        time,
        callout.words.split(' ').length / speechWordsPerSecond,
      ),
    ];
  });
  return [...controller, ...aircraft];
}

const voice = (does: string, id: string, at: number, takes: number): Duty => ({
  ...{ id, who: null, does, takes, speaks: 0, at, follows: [], lag: 0 },
  ...{ order: 'fixed', breath: null, deadline: null },
});

/** When a height is passed downwards, s; the ground is taken as flat as the aerodrome. Null: never in this flight. */
function momentOf(when: string, { samples, conditions }: Trace): number | null {
  const said = /^radio height (\d+) ft descending$/.exec(when);
  const height = said ? Number(said[1]) : when === 'minima' ? conditions.minima - conditions.elevation : null;
  if (height === null) return null;
  for (let row = 1; row < samples.height.length; row += 1) {
    const [above, below] = [samples.height[row - 1]!, samples.height[row]!];
    if (above <= height || below > height) continue;
    const share = (above - height) / (above - below);
    return samples.time[row - 1]! + share * (samples.time[row]! - samples.time[row - 1]!);
  }
  return null;
}
