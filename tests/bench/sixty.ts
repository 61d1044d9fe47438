// Procedures of 60 steps made of the demo operator's own, each different: whole objects, so that nothing kept by identity helps.
import type { Procedure, ProcedureId, StepId } from '../../lib/procedure/procedure.ts';
import { procedureNames, seedProcedure } from '../kit/seed.ts';

const STEPS = 60;
const seeds = procedureNames().map(seedProcedure);

/** The `turn`-th one: it begins with another seed procedure each time and is filled up with the steps of the next ones. */
export function sixtySteps(turn: number): Procedure {
  const first = seeds[turn % seeds.length]!;
  const rest = seeds.map((_, index) => seeds[(turn + 1 + index) % seeds.length]!).filter((each) => each !== first);
  const steps = [...first.steps, ...rest.flatMap((each) => each.steps)].slice(0, STEPS);
  return {
    ...first,
    id: `pr-${turn}` as ProcedureId,
    title: `${first.title} ${turn}`,
    steps: steps.map((step, index) => ({
      ...step,
      id: `b${turn}-${index}` as StepId,
      note: `${step.note} ${turn}`.trim(),
    })),
  };
}
