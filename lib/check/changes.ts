// The changes since the last issue, each with what was said of it: what checks 109 and 110 share.
import type { Change, Meaning } from '../diff/change.ts';
import { compare } from '../diff/compare.ts';
import { describe, namesOf } from '../diff/describe.ts';
import type { Procedure, Step } from '../procedure/procedure.ts';
import type { Place } from './finding.ts';
import type { ChangeFacts, Mark } from './governance.ts';

export type MarkedChange = {
  readonly at: Place;
  /** In words, such as "value: “195 kt” is now “190 kt”". */
  readonly says: string;
  readonly meaning: Meaning;
  /** The most particular mark that covers it. */
  readonly mark: Mark | null;
  /** The mark's, or what the step itself names now and did not name before. */
  readonly source: string;
};

const made = new WeakMap<Procedure, { readonly facts: ChangeFacts; readonly changes: readonly MarkedChange[] }>();

/** Empty when no issue was signed before. */
export function markedChanges(facts: ChangeFacts, procedure: Procedure): readonly MarkedChange[] {
  const known = made.get(procedure);
  if (known?.facts === facts) return known.changes;
  const changes = marked(facts, procedure);
  made.set(procedure, { facts, changes });
  return changes;
}

function marked({ base, marks }: ChangeFacts, procedure: Procedure): readonly MarkedChange[] {
  if (base === null) return [];
  const name = namesOf(base.procedure, procedure);
  const changes = compare(base.procedure, procedure);
  const cited = new Map(changes.flatMap((change) => citedNow(change)));
  return changes.map((change) => {
    const at = placeOf(change);
    const covers = (mark: Mark, step: string, field: string): boolean => mark.step === step && mark.field === field;
    const mark =
      marks.find((one) => covers(one, at.step, at.field)) ??
      marks.find((one) => covers(one, at.step, '')) ??
      marks.find((one) => covers(one, '', '')) ??
      null;
    const says = `${subject(change, name)}${describe(change, name)}`;
    return { at, says, meaning: meaningOf(change), mark, source: cited.get(at.step) || (mark?.source ?? '') };
  });
}

const subject = (change: Change, name: (id: string) => string): string =>
  change.kind === 'field' || change.kind === 'moved' ? `${name(change.id)}, ` : '';

function citedNow(change: Change): readonly (readonly [string, string])[] {
  if (change.kind === 'added') return [[change.step.id, change.step.source]];
  return change.kind === 'field' && change.field === 'source' ? [[change.id, String(change.after)]] : [];
}

/** What is gone has no place in the text: such a change points at the whole. */
function placeOf(change: Change): Place {
  const whole = { step: '', field: 'title' };
  switch (change.kind) {
    case 'added':
      return { step: change.step.id, field: 'object' satisfies keyof Step };
    case 'moved':
      return { step: change.id, field: 'object' satisfies keyof Step };
    case 'field':
      return { step: change.id, field: change.field };
    case 'procedure-field':
      return { step: '', field: change.field };
    default:
      return whole;
  }
}

const meaningOf = (change: Change): Meaning => ('meaning' in change ? change.meaning : 'order');
