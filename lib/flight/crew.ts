/**
 * What two pilots have to do and say when a procedure is flown: each step becomes duties with the durations of the
 * operator's policy, begun when the flight made its cue true or when what it waits for is said or done.
 */
import type { Gate } from '../gate/syntax.ts';
import { conjuncts } from '../procedure/cue.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import { allSteps, type Procedure, type Step, type StepId } from '../procedure/procedure.ts';
import { type Crew, type Part, partsOf } from './crew-parts.ts';
import { outsideVoices } from './crew-voices.ts';
import type { Duty } from './timeline.ts';

const idOf = (step: StepId, part: string): string => `${step}/${part}`;
/** The step that a duty belongs to; null: an outside voice or an interruption. */
export function stepOfDuty({ id }: Duty): StepId | null {
  const end = id.lastIndexOf('/');
  return end < 0 ? null : (id.slice(0, end) as StepId);
}

/** A gate is taken as waiting for a step when the flight opened it within this of that step's end, s. */
const SAME_MOMENT = 0.5;

/** The duties of a flight, in the order of the list, then the voices from outside. */
export function dutiesOf(crew: Crew): readonly Duty[] {
  const { procedure, trace } = crew;
  const times = new Map(trace.steps.map((one) => [one.step, one]));
  const flown = allSteps(procedure).filter((step) => {
    const one = times.get(step.id);
    return one !== undefined && one.gate !== null && one.left === '';
  });
  const parts = new Map(flown.map((step) => [step.id, partsOf(step, crew.policy, crew.items(step))]));
  const branchOf = new Map(procedure.branches.flatMap((branch) => branch.steps.map((step) => [step.id, branch.id])));
  const duties: Duty[] = [];
  for (const [index, step] of flown.entries()) {
    const own = parts.get(step.id)!;
    const earlier = flown.slice(0, index).filter((other) => branchOf.get(other.id) === branchOf.get(step.id));
    const waits = waitsFor(step, flown, earlier, parts);
    const gate = times.get(step.id)!.gate!;
    const last = Math.max(...waits.steps.map((id) => times.get(id)?.done ?? Number.NEGATIVE_INFINITY));
    const behind = !crew.forced(step) && gate > last + waits.lag + SAME_MOMENT;
    const measured = waits.duties.length === 0 || behind;
    // All that a flight takes as given is there at its first moment; a crew is told one thing after the other.
    const told = waits.duties.length === 0 && gate === 0 ? lastOf(earlier.at(-1)?.id ?? step.id, parts) : [];
    let follows = measured
      ? [...waits.duties, ...(earlier.length > 0 ? told : [])]
      : [...waits.duties, ...above(own[0]?.who, earlier, parts)];
    for (const part of own) {
      const ids = part.who.map((who) => idOf(step.id, part.who.length > 1 ? `${part.name} ${who}` : part.name));
      for (const [place, who] of part.who.entries()) {
        duties.push({
          id: ids[place]!,
          who,
          does: part.does,
          takes: part.takes,
          speaks: place === 0 ? part.speaks : null,
          at: part === own[0] && measured ? gate : null,
          follows,
          lag: part === own[0] && !measured ? waits.lag : 0,
          order: part.name === 'reply' ? 'answer' : 'in turn',
          breath: part.speaks === null ? null : breathOf(step),
          deadline: part === own.at(-1) ? deadlineOf(step, procedure, parts) : null,
        });
      }
      follows = ids;
    }
  }
  return [...duties, ...outsideVoices(crew)];
}

type Parts = ReadonlyMap<StepId, readonly Part[]>;
const lastOf = (id: StepId, parts: Parts): readonly string[] => endOf(id, parts.get(id)?.at(-1));
const endOf = (id: StepId, part: Part | undefined): readonly string[] =>
  part === undefined ? [] : part.who.map((who) => idOf(id, part.who.length > 1 ? `${part.name} ${who}` : part.name));

/** What the cue of a step waits for among the steps: `then`, `after GA-01`, `heard "gear up"`. */
function waitsFor(step: Step, flown: readonly Step[], earlier: readonly Step[], parts: Parts) {
  const duties: string[] = [];
  const steps: StepId[] = [];
  let lag = 0;
  for (const part of conjuncts(parsedCue(step.cue).gate)) {
    const found = waitedFor(part, flown, earlier, parts);
    if (found === null) continue;
    duties.push(...found.duties);
    steps.push(found.step);
    if (part.kind === 'after' && part.delay?.kind === 'amount') lag = part.delay.value;
  }
  return { duties, steps, lag };
}

function waitedFor(part: Gate, flown: readonly Step[], earlier: readonly Step[], parts: Parts) {
  if (part.kind === 'then') {
    const step = earlier.at(-1)?.id;
    return step === undefined ? null : { step, duties: lastOf(step, parts) };
  }
  if (part.kind === 'after' && !part.every) {
    const step = flown.find((one) => one.id === part.step || one.label === part.step)?.id;
    return step === undefined ? null : { step, duties: lastOf(step, parts) };
  }
  if (part.kind !== 'heard') return null;
  for (const other of earlier.toReversed()) {
    const said = parts.get(other.id)?.findLast((one) => one.speaks !== null && one.does.includes(part.words));
    if (said !== undefined) return { step: other.id, duties: endOf(other.id, said) };
  }
  return null;
}

/** A list is read downwards: what waits for words or deeds alone also waits for what the same pilot has above it. */
function above(who: readonly Duty['who'][] | undefined, earlier: readonly Step[], parts: Parts): readonly string[] {
  const before = earlier.findLast((step) =>
    parts.get(step.id)?.some((part) => part.who.some((one) => who?.includes(one))),
  );
  return before === undefined ? [] : lastOf(before.id, parts);
}

/** V1 and VR may come within a breath of each other, and are then said in one. */
function breathOf(step: Step): string | null {
  const called = conjuncts(parsedCue(step.cue).gate).some(
    (part) => part.kind === 'compare' && part.right.kind === 'speed' && /^V[1R]$/.test(part.right.name),
  );
  return called ? 'V1 VR' : null;
}

/** `6 s of GA-01`; `4 s` behind the own hand. Other limits (`by 75 kt`) have no moment of their own. */
function deadlineOf(step: Step, procedure: Procedure, parts: Parts): Duty['deadline'] {
  const said = /^(\d+(?:\.\d+)?) s(?: of (\S+))?$/.exec(step.checkWithin.trim());
  if (said === null || (step.verb !== 'press' && said[2] === undefined)) return null;
  const named =
    said[2] === undefined ? step : allSteps(procedure).find(({ id, label }) => said[2] === id || said[2] === label);
  const own = named === undefined ? undefined : parts.get(named.id);
  const hand = own?.find((part) => part.name === 'act') ?? own?.[0];
  const behind = named === undefined ? undefined : endOf(named.id, hand)[0];
  return behind === undefined ? null : { behind, seconds: Number(said[1]) };
}
