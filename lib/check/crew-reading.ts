// Presses and the readings that belong to them: in the step itself where the other pilot answers with the modes, else the
// next reading of the mode line.
import { stepOfDuty } from '../flight/crew.ts';
import type { Span, Timeline } from '../flight/timeline.ts';
import { allSteps, type Procedure, type Step, type StepId } from '../procedure/procedure.ts';

export type Reading = {
  readonly step: StepId;
  readonly pressed: number;
  readonly start: number;
  /** s from the end of the press to the reading. */
  readonly late: number;
  /** Steps that hang on the modes and are begun between the two: levers, presses, the radio. */
  readonly between: readonly StepId[];
};
export type PressRead = { readonly press: Step; readonly reading: (crew: Timeline) => Reading | null };

const MODE_LINE = /\bmode (line|words?|annunciat)/i;
const changesModes = ({ expect }: Step): boolean =>
  [expect.thrust, expect.lateral, expect.vertical].some((mode) => mode !== '' && mode !== 'same');
const HANGS = /\b(flaps?|gear|heading|selector|radio|HEADING|ROUTE|APPROACH)\b/i;

/** Every press that changes modes and is read somewhere, with a way to find both on a timeline. */
export function pressesRead(procedure: Procedure): readonly PressRead[] {
  const lines = [procedure.steps, ...procedure.branches.map((branch) => branch.steps)];
  return lines.flatMap((line) =>
    line.flatMap((press, index): readonly PressRead[] => {
      if (press.verb !== 'press' || !changesModes(press)) return [];
      const behind = line.slice(index + 1);
      const answered = press.reply !== '' || (press.say !== '' && press.sayBy !== '' && press.sayBy !== press.who);
      const reader = answered ? press : behind.find((step) => step.verb === 'read' && MODE_LINE.test(step.object));
      if (reader === undefined) return [];
      return [{ press, reading: (crew) => readingOf(procedure, press, reader, crew) }];
    }),
  );
}

const ofStep = (crew: Timeline, step: Step): readonly Span[] =>
  crew.spans.filter(({ duty }) => stepOfDuty(duty) === step.id);

function readingOf(procedure: Procedure, press: Step, reader: Step, crew: Timeline): Reading | null {
  const pressed = ofStep(crew, press).find(({ duty }) => duty.id.endsWith('/act'));
  const read = reader === press ? ofStep(crew, press).at(-1) : ofStep(crew, reader)[0];
  if (pressed === undefined || read === undefined || read === pressed) return null;
  const steps = allSteps(procedure);
  const [from, to] = [steps.indexOf(press), steps.indexOf(reader)];
  const between = steps.filter((step, place) => {
    if (place <= from || place >= to || !HANGS.test(step.object)) return false;
    const first = ofStep(crew, step)[0];
    return first !== undefined && first.start < read.start;
  });
  return {
    step: reader.id,
    pressed: pressed.end,
    start: read.start,
    late: read.start - pressed.end,
    between: between.map(({ id }) => id),
  };
}
