import type { Procedure, Step } from '../procedure/procedure.ts';
import {
  BRANCH_FIELDS,
  type Change,
  meaningOfBranchField,
  meaningOfProcedureField,
  meaningOfStepField,
  PROCEDURE_FIELDS,
  STEP_FIELDS,
} from './change.ts';
import { movedIds, standings } from './match.ts';
import { longestIncreasing } from './order.ts';

/** Deep equality of plain data; key order does not count. */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const left = Object.entries(a).filter(([, value]) => value !== undefined);
  const right = b as Record<string, unknown>;
  const size = Object.values(right).filter((value) => value !== undefined).length;
  return left.length === size && left.every(([key, value]) => key in right && same(value, right[key]));
}

/** What changes from `before` to `after`, steps in the reading order of `after`, removals first.
 *  Laws: `compare(a, a)` is empty; `apply(a, compare(a, b))` is `b`. */
export function compare(before: Procedure, after: Procedure): readonly Change[] {
  const changes: Change[] = [];
  for (const field of PROCEDURE_FIELDS) {
    if (same(before[field], after[field])) continue;
    changes.push({
      kind: 'procedure-field',
      field,
      meaning: meaningOfProcedureField(field),
      before: before[field],
      after: after[field],
    });
  }
  changes.push(...branchChanges(before, after));
  changes.push(...stepChanges(before, after));
  return changes;
}

function stepChanges(before: Procedure, after: Procedure): Change[] {
  const was = standings(before);
  const is = standings(after);
  const wasById = new Map(was.map((standing) => [standing.step.id as string, standing]));
  const isById = new Map(is.map((standing) => [standing.step.id as string, standing]));
  const moved = movedIds(was, is);
  const changes: Change[] = [];
  for (const { step, position } of was)
    if (!isById.has(step.id)) changes.push({ kind: 'removed', step, from: position });
  for (const { step, position } of is) {
    const old = wasById.get(step.id);
    if (!old) {
      changes.push({ kind: 'added', step, to: position });
      continue;
    }
    if (moved.has(step.id)) {
      changes.push({
        kind: 'moved',
        id: step.id,
        label: step.label || old.step.label,
        from: old.position,
        to: position,
      });
    }
    changes.push(...fieldChanges(old.step, step));
  }
  return changes;
}

function fieldChanges(before: Step, after: Step): Change[] {
  return STEP_FIELDS.filter((field) => !same(before[field], after[field])).map((field) => ({
    kind: 'field',
    id: after.id,
    label: after.label || before.label,
    field,
    meaning: meaningOfStepField(field),
    before: before[field],
    after: after[field],
  }));
}

function branchChanges(before: Procedure, after: Procedure): Change[] {
  const changes: Change[] = [];
  const wasAt = new Map(before.branches.map((branch, at) => [branch.id, at]));
  const isIds = new Set(after.branches.map((branch) => branch.id));
  const behind = (list: Procedure['branches'], at: number) => (at === 0 ? '' : list[at - 1]!.id);
  before.branches.forEach((branch, at) => {
    if (!isIds.has(branch.id)) {
      // Its steps are told one by one, so that a step carried over into another line counts as moved.
      changes.push({ kind: 'branch-removed', branch: { ...branch, steps: [] }, after: behind(before.branches, at) });
    }
  });
  const stayed = after.branches.filter((branch) => wasAt.has(branch.id));
  const kept = longestIncreasing(stayed.map((branch) => wasAt.get(branch.id)!));
  after.branches.forEach((branch, at) => {
    const place = behind(after.branches, at);
    const old = before.branches[wasAt.get(branch.id) ?? -1];
    if (!old) {
      changes.push({ kind: 'branch-added', branch: { ...branch, steps: [] }, after: place });
      return;
    }
    if (!kept.has(stayed.indexOf(branch))) {
      changes.push({ kind: 'branch-moved', id: branch.id, label: branch.label || old.label, after: place });
    }
    for (const field of BRANCH_FIELDS) {
      if (same(old[field], branch[field])) continue;
      changes.push({
        kind: 'branch-field',
        id: branch.id,
        label: branch.label || branch.title,
        field,
        meaning: meaningOfBranchField(field),
        before: old[field],
        after: branch[field],
      });
    }
  });
  return changes;
}
