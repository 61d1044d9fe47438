// The sisters of a step: steps of the same family in this procedure and in all others.
import type { Phase, Procedure, Step } from '../procedure/procedure.ts';
import type { Corpus } from './corpus.ts';
import { type Sister, sistersOf } from './sister.ts';

export type Relative = Sister & {
  readonly of: string;
  readonly title: string;
  readonly class: Procedure['class'];
  readonly phases: readonly Phase[];
};
export type Member = { readonly sister: Sister; readonly relatives: readonly Relative[] };

const own = new WeakMap<readonly Step[], readonly Sister[]>();

/** Steps that have sisters, in reading order, each with them; those of others come behind. */
export function members(procedure: Procedure, steps: readonly Step[], others: Corpus): readonly Member[] {
  const mine = own.get(steps) ?? sistersOf(procedure, steps);
  own.set(steps, mine);
  const { id, title, class: kind, phases } = procedure;
  const whole = { of: id, title, class: kind, phases };
  const families = new Map<string, Sister[]>();
  for (const sister of mine) {
    const there = families.get(sister.family);
    if (there === undefined) families.set(sister.family, [sister]);
    else there.push(sister);
  }
  return mine.flatMap((sister) => {
    const near = families.get(sister.family)!.filter((each) => each !== sister);
    const far = others.read('family', sister.family).filter(({ of }) => of.id !== procedure.id);
    if (near.length + far.length === 0) return [];
    const relatives = [
      ...near.map((each): Relative => ({ ...each, ...whole })),
      ...far.map(
        ({ of, tells }): Relative => ({
          ...tells,
          of: of.id,
          title: of.title,
          class: of.class,
          phases: of.phases,
        }),
      ),
    ];
    return [{ sister, relatives }];
  });
}

/** `three others`: who says otherwise, by name up to two. */
export function namesOf(relatives: readonly Relative[]): string {
  const names = [...new Set(relatives.map((each) => each.called))];
  return names.length <= 2 ? names.join(' and ') : `${names.slice(0, 2).join(', ')} and ${names.length - 2} more`;
}
