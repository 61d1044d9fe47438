// Plants one defect in a whole procedure and leaves the rest as it is. Steps are named by label, as a pilot would.
import { type StepParts, stepWith } from '../../lib/procedure/build.ts';
import { allSteps, type Expect, type Procedure, type StateLine, type Step } from '../../lib/procedure/procedure.ts';

const KEPT: Expect = { thrust: 'same', lateral: 'same', vertical: 'same', armed: 'same' };

type TextField = { [K in keyof Step]: Step[K] extends string ? K : never }[keyof Step];

export function stepOf(procedure: Procedure, label: string): Step {
  const step = allSteps(procedure).find((each) => each.label === label);
  if (step === undefined) throw new Error(`${procedure.title} has no step ${label}`);
  return step;
}

function mapped(procedure: Procedure, change: (steps: readonly Step[]) => readonly Step[]): Procedure {
  return {
    ...procedure,
    steps: change(procedure.steps),
    branches: procedure.branches.map((branch) => ({ ...branch, steps: change(branch.steps) })),
  };
}

/** Fields of one step replaced. Throws if the step is not there or nothing would change: a plant that plants nothing. */
export function edited(procedure: Procedure, label: string, fields: Partial<Step>): Procedure {
  const before = stepOf(procedure, label);
  const same = Object.entries(fields).every(([key, value]) => before[key as keyof Step] === value);
  if (same) throw new Error(`${label} is like that already`);
  return mapped(procedure, (steps) => steps.map((step) => (step.label === label ? { ...step, ...fields } : step)));
}

/** Words of one field replaced by others; throws if they are not there. */
export function reworded(procedure: Procedure, label: string, field: TextField, from: string, to: string): Procedure {
  const text = stepOf(procedure, label)[field];
  if (!text.includes(from)) throw new Error(`${label} ${field} does not say "${from}" but "${text}"`);
  return edited(procedure, label, { [field]: text.replace(from, to) });
}

const UNIT = /(\d) ?(kt|ft\/min|ft|NM|t|kg|%|s|min|°C|°)(?![\w/])/;
const REFERENCE = / (AAL|MSL)\b/;

/** The first figure of a field loses its unit, and the reference with it. */
export function withoutUnit(procedure: Procedure, label: string, field: TextField): Procedure {
  const text = stepOf(procedure, label)[field];
  if (!UNIT.test(text)) throw new Error(`${label} ${field} has no unit: "${text}"`);
  return edited(procedure, label, { [field]: text.replace(UNIT, '$1').replace(REFERENCE, '') });
}

/** `1 000 ft AAL` becomes `1 000 ft`. */
export function withoutReference(procedure: Procedure, label: string, field: TextField): Procedure {
  return reworded(procedure, label, field, REFERENCE.exec(stepOf(procedure, label)[field])?.[0] ?? ' AAL', '');
}

/** `VREF F35 + 5 kt` becomes `VREF + 5 kt`. */
export function withoutDetent(procedure: Procedure, label: string, field: TextField): Procedure {
  const text = stepOf(procedure, label)[field];
  return reworded(procedure, label, field, /(?<=V(?:REF|MM|FE)) F\d+/.exec(text)?.[0] ?? ' F35', '');
}

export const withoutActor = (procedure: Procedure, label: string): Procedure => edited(procedure, label, { who: '' });
export const withoutCue = (procedure: Procedure, label: string): Procedure => edited(procedure, label, { cue: '' });
export const withoutReply = (procedure: Procedure, label: string): Procedure =>
  edited(procedure, label, { replyBy: '', reply: '', replyAct: '' });

/** The lever goes to another detent than the step is about: one is skipped. */
export function selects(procedure: Procedure, label: string, detent: string): Procedure {
  return edited(procedure, label, { value: detent, checkSees: `flaps ${detent} indicated` });
}

export const expects = (procedure: Procedure, label: string, expect: Partial<Expect>): Procedure =>
  edited(procedure, label, { expect: { ...stepOf(procedure, label).expect, ...expect } });

export function withoutStep(procedure: Procedure, label: string): Procedure {
  stepOf(procedure, label);
  return mapped(procedure, (steps) => steps.filter((step) => step.label !== label));
}

/** The step comes right behind another one of the same line. */
export function movedBehind(procedure: Procedure, label: string, behind: string): Procedure {
  const step = stepOf(procedure, label);
  const target = stepOf(procedure, behind);
  return mapped(procedure, (steps) => {
    if (!steps.includes(step) || !steps.includes(target)) return steps;
    const rest = steps.filter((each) => each !== step);
    const at = rest.indexOf(target) + 1;
    return [...rest.slice(0, at), step, ...rest.slice(at)];
  });
}

/** Parts of the entry or exit line are no longer stated. */
export function unstated(procedure: Procedure, side: 'entry' | 'exit', ...parts: (keyof StateLine)[]): Procedure {
  const line: Record<string, unknown> = { ...procedure[side] };
  for (const part of parts) line[part] = part === 'armed' ? null : Array.isArray(line[part]) ? [] : '';
  return { ...procedure, [side]: line as StateLine };
}

export const heavier = (procedure: Procedure, from: number, to: number): Procedure => ({
  ...procedure,
  envelope: { ...procedure.envelope, weight: { from, to } },
});

/** Steps put right behind another one of the main line, each with what is given and nothing else. */
export function withSteps(procedure: Procedure, behind: string, ...parts: readonly StepParts[]): Procedure {
  const at = procedure.steps.indexOf(stepOf(procedure, behind)) + 1;
  if (at === 0) throw new Error(`${behind} is not in the main line`);
  const steps = parts.map((each, index) => stepWith({ expect: KEPT, ...each }, 900 + index));
  return { ...procedure, steps: [...procedure.steps.slice(0, at), ...steps, ...procedure.steps.slice(at)] };
}
