// The figures of a text held against the altitudes that the cold moves: which are right, which are not.
import type { Procedure, Step } from '../procedure/procedure.ts';
import type { Charted } from './cold-chart.ts';
import { type Figure, figuresIn } from './figures.ts';
import { type Text, textsOf } from './texts.ts';

export type ColdFigure = Text & {
  readonly figure: Figure;
  readonly of: Charted;
  readonly is: 'right' | 'uncorrected' | 'wrong';
};

/** What the controller gives counts as corrected by him. */
const BY_CONTROLLER = /\b(vector(ed|s)?|radar|assigned|cleared altitude)\b/i;

function isOf(value: number, about: string, list: readonly Charted[]): Omit<ColdFigure, keyof Text | 'figure'> | null {
  const right = list.find((each) => each.set === value || each.corrected === value);
  if (right !== undefined) return { of: right, is: 'right' };
  const uncorrected = list.find((each) => each.charted === value);
  if (uncorrected !== undefined) return { of: uncorrected, is: 'uncorrected' };
  const named = list.filter((each) => each.words.test(about));
  return named.length === 1 ? { of: named[0]!, is: 'wrong' } : null;
}

/** Altitudes above sea level in all texts and in the state lines that are, or should be, one of the list. */
export function coldFigures(
  procedure: Procedure,
  steps: readonly Step[],
  list: readonly Charted[],
): readonly ColdFigure[] {
  const { entry, exit } = procedure;
  const line = (side: 'entry' | 'exit', text: string): Text => ({
    at: { step: '', field: `${side}.selectedAltitude` },
    text,
  });
  const texts = [
    ...textsOf(procedure, steps),
    line('entry', entry.selectedAltitude),
    line('exit', exit.selectedAltitude),
  ];
  const about = new Map(steps.map((step) => [step.id as string, `${step.object} ${step.value}`]));
  return texts.flatMap(({ at, text }) => {
    if (BY_CONTROLLER.test(text)) return [];
    const high = figuresIn(text).filter(({ unit, behind }) => unit === 'ft' && /^MSL\b/i.test(behind));
    return high.flatMap((figure): ColdFigure[] => {
      const found = isOf(figure.value, `${text} ${about.get(at.step) ?? ''}`, list);
      return found === null ? [] : [{ at, text, figure, ...found }];
    });
  });
}
