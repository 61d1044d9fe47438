import type { Procedure, Step } from '../procedure/procedure.ts';
import type { Position } from './change.ts';
import { longestIncreasing } from './order.ts';

export type Standing = { readonly step: Step; readonly position: Position };

/** Every step with the place where it stands, in reading order. */
export function standings(procedure: Procedure): readonly Standing[] {
  const line = (parent: string, steps: readonly Step[]) =>
    steps.map((step, at) => ({ step, position: { parent, after: at === 0 ? '' : steps[at - 1]!.id } }));
  return [...line('', procedure.steps), ...procedure.branches.flatMap((branch) => line(branch.id, branch.steps))];
}

/** Ids of `after` that count as moved: those that changed line, or that stand outside the longest run left in order. */
export function movedIds(before: readonly Standing[], after: readonly Standing[]): Set<string> {
  const was = new Map(
    before.map((standing, at) => [standing.step.id as string, { at, parent: standing.position.parent }]),
  );
  const moved = new Set<string>();
  const parents = new Set(after.map((standing) => standing.position.parent));
  for (const parent of parents) {
    const here = after.filter((standing) => standing.position.parent === parent && was.has(standing.step.id));
    const stayed = here.filter((standing) => was.get(standing.step.id)!.parent === parent);
    for (const standing of here) if (!stayed.includes(standing)) moved.add(standing.step.id);
    const kept = longestIncreasing(stayed.map((standing) => was.get(standing.step.id)!.at));
    stayed.forEach((standing, at) => {
      if (!kept.has(at)) moved.add(standing.step.id);
    });
  }
  return moved;
}
