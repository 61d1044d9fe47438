import { assert } from '../base/assert.ts';
import type { Branch, Procedure, Step } from '../procedure/procedure.ts';
import type { Change } from './change.ts';

/** Carries out what `compare` found. Throws when the changes do not belong to this procedure: that is misuse, not input. */
export function apply(procedure: Procedure, changes: readonly Change[]): Procedure {
  const steps = new Map<string, Step>();
  const lines = new Map<string, string[]>([['', procedure.steps.map((step) => step.id)]]);
  const branches = new Map<string, Branch>(procedure.branches.map((branch) => [branch.id, branch]));
  const branchOrder = procedure.branches.map((branch) => branch.id);
  for (const branch of procedure.branches)
    lines.set(
      branch.id,
      branch.steps.map((step) => step.id),
    );
  for (const step of [...procedure.steps, ...procedure.branches.flatMap((branch) => branch.steps)])
    steps.set(step.id, step);
  const fields: Record<string, unknown> = {};

  // Whatever goes or moves is taken out first, so that every "behind" names something that already stands right.
  for (const change of changes) {
    if (change.kind === 'removed' || change.kind === 'moved') {
      takeOut(lines.get(change.from.parent), change.kind === 'removed' ? change.step.id : change.id);
    }
    if (change.kind === 'branch-removed') takeOut(branchOrder, change.branch.id);
    if (change.kind === 'branch-moved') takeOut(branchOrder, change.id);
  }
  for (const change of changes) {
    switch (change.kind) {
      case 'branch-added':
        branches.set(change.branch.id, change.branch);
        if (!lines.has(change.branch.id)) lines.set(change.branch.id, []);
        putBehind(branchOrder, change.branch.id, change.after);
        break;
      case 'branch-moved':
        putBehind(branchOrder, change.id, change.after);
        break;
      case 'branch-field':
        branches.set(change.id, { ...branches.get(change.id)!, [change.field]: change.after });
        break;
      case 'procedure-field':
        fields[change.field] = change.after;
        break;
      case 'added':
        steps.set(change.step.id, change.step);
        putBehind(lines.get(change.to.parent), change.step.id, change.to.after);
        break;
      case 'moved':
        putBehind(lines.get(change.to.parent), change.id, change.to.after);
        break;
      case 'field':
        steps.set(change.id, { ...steps.get(change.id)!, [change.field]: change.after });
        break;
      default:
    }
  }
  const line = (id: string) => (lines.get(id) ?? []).map((step) => steps.get(step)!);
  return {
    ...procedure,
    ...fields,
    steps: line(''),
    branches: branchOrder.map((id) => ({ ...branches.get(id)!, steps: line(id) })),
  };
}

function takeOut(line: string[] | undefined, id: string) {
  const at = line?.indexOf(id) ?? -1;
  assert(at >= 0, `the change speaks of ${id}, which does not stand where it says`);
  line!.splice(at, 1);
}

function putBehind(line: string[] | undefined, id: string, after: string) {
  const at = after === '' ? -1 : (line?.indexOf(after) ?? -1);
  assert(line && (after === '' || at >= 0), `the change puts ${id} behind ${after}, which is not there`);
  line.splice(at + 1, 0, id);
}
