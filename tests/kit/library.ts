// Libraries for tests and benches: procedures made from those of the demo operator, and edits that reach across them.
import type { Procedure, ProcedureId, Step, StepId } from '../../lib/procedure/procedure.ts';
import { procedureNames, seedProcedure } from './seed.ts';

/** Whole numbers from 0 up to, not including, `below`: the same ones for the same seed. */
export type Chance = (below: number) => number;
export function chanceFrom(seed: number): Chance {
  let state = seed >>> 0;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** `count` procedures of `size` steps in the main line, each with ids and labels of its own; families and words are those
 *  of the demo operator, so that each text has sisters in many others. */
export function madeLibrary(count: number, size: number): readonly Procedure[] {
  const seeds = procedureNames().map(seedProcedure);
  return Array.from({ length: count }, (_, number): Procedure => {
    const base = seeds[number % seeds.length]!;
    const pool = [base, ...seeds.filter((seed) => seed !== base)].flatMap((seed) => seed.steps);
    const steps = pool.slice(0, size).map(
      (step, place): Step => ({
        ...step,
        id: `st_${number}_${place}` as StepId,
        label: `Z${number}-${String(place + 1).padStart(2, '0')}`,
      }),
    );
    return { ...base, id: `pr_${number}` as ProcedureId, title: `${base.title} ${number}`, steps, branches: [] };
  });
}

type Edit = (procedure: Procedure, chance: Chance, all: readonly Procedure[]) => Procedure;

const pick = <T>(from: readonly T[], chance: Chance): T => from[chance(from.length)]!;
const onStep =
  (change: (step: Step, chance: Chance, all: readonly Procedure[]) => Partial<Step>): Edit =>
  (procedure, chance, all) => {
    const place = chance(procedure.steps.length);
    const steps = procedure.steps.map((step, at) => (at === place ? { ...step, ...change(step, chance, all) } : step));
    return { ...procedure, steps };
  };
const anyStep = (all: readonly Procedure[], chance: Chance): Step => pick(pick(all, chance).steps, chance);

/** Edits that other procedures can hear: sisters, labels, links, numbers, titles, classes, standards, calls, gates. */
const EDITS: readonly Edit[] = [
  onStep((_, chance, all) => ({ value: anyStep(all, chance).value })),
  onStep((_, chance, all) => ({ family: anyStep(all, chance).family || anyStep(all, chance).id })),
  onStep((_, chance) => ({ why: pick(['', 'higher ground', 'hot brakes'], chance) })),
  onStep((_, chance) => ({ cue: pick(['then', 'height >= 400 ft AAL', 'height >= 1 000 ft AAL'], chance) })),
  onStep((_, chance) => ({
    note: pick(['tailwind limit 10 kt', 'tailwind limit 15 kt', 'crosswind limit 20 kt'], chance),
  })),
  onStep((_, chance, all) => ({
    checkIfNot: pick(['list "Flaps not in agreement"', anyStep(all, chance).label], chance),
  })),
  onStep((_, chance) => ({ label: pick(['TO-12', 'GA-08', 'ZZ-01', ''], chance) })),
  onStep((_, chance) => ({ orderWords: pick(['flap six', 'flap twenty-six', 'flap two-six'], chance) })),
  onStep((_, chance, all) => ({ ...anyStep(all, chance), id: `st_${chance(1e9)}` as StepId })),
  (procedure, chance) => ({
    ...procedure,
    steps: procedure.steps.filter((_, at) => at !== chance(procedure.steps.length)),
  }),
  (procedure, chance) => ({
    ...procedure,
    title: pick(['Go-around', 'Ditching', 'Climb, standard A', procedure.title], chance),
  }),
  (procedure, chance) => ({ ...procedure, class: pick(['normal', 'engine-out', 'supplementary normal'], chance) }),
  (procedure, chance) => ({
    ...procedure,
    phases: pick([['go-around'], ['take-off', 'climb'], ['approach', 'landing']], chance),
  }),
  (procedure, chance) => ({ ...procedure, leavesTo: [pick(['ditching', 'go-around', 'instrument approach'], chance)] }),
  (procedure, chance) => ({
    ...procedure,
    effectivity: { ...procedure.effectivity, standards: pick([['A'], ['B'], ['A', 'B']], chance) },
  }),
];

/** One procedure of the library with one edit of it. */
export const editedOne = (all: readonly Procedure[], chance: Chance): Procedure =>
  pick(EDITS, chance)(pick(all, chance), chance, all);
