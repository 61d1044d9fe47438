// Published figures by their id in the project's table, for tests of checks: what a regulation or a manual says.
import { FIGURES } from '../air/published/figures.ts';

export function published(id: string): readonly number[] {
  const figure = FIGURES.find((each) => each.id === id);
  if (figure === undefined) throw new Error(`nothing is published as ${id}`);
  return [figure.expected].flat().map(Number);
}
