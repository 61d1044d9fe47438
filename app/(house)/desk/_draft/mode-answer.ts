// What the explorer says of one step, as plain data that a worker can send. Standards that say the same share one entry.
import type { ModeSet } from '../../../../lib/aircraft/mode-set.ts';
import { expectedModes, type Possible, stepModes } from '../../../../lib/mode/expect.ts';
import { type Flights, fly } from '../../../../lib/mode/flights.ts';
import { AS_WRITTEN } from '../../../../lib/mode/setting.ts';
import { allSteps, type Expect, type Procedure, type Step } from '../../../../lib/procedure/procedure.ts';
import { AXES, standardsWords } from './mode-words.ts';

export type ModesOn = {
  readonly standards: readonly string[];
  /** False: no flight as written comes to the step. */
  readonly reached: boolean;
  readonly before: Possible;
  readonly after: Possible;
};
/** What can be filled in as expected, or in words why nothing can. */
export type Fill = { readonly expect: Expect } | { readonly because: string };
export type ModeAnswer = {
  readonly step: string;
  readonly on: readonly ModesOn[];
  readonly refused: Flights['refused'];
  readonly setting: string;
  readonly fill: Fill;
};

export const flyAsWritten = (modes: ModeSet, procedure: Procedure): Flights => fly(modes, procedure, AS_WRITTEN);

/** null: the procedure has no such step. */
export function modeAnswer(flights: Flights, procedure: Procedure, id: string): ModeAnswer | null {
  const step = allSteps(procedure).find((one) => one.id === id);
  if (!step) return null;
  const { refused, setting } = flights;
  const on = modesOn(flights, step);
  return { step: id, on, refused, setting, fill: fillOf(flights, on, step) };
}

function modesOn(flights: Flights, step: Step): readonly ModesOn[] {
  const groups = new Map<string, ModesOn>();
  for (const flight of flights.flights) {
    const found = stepModes({ ...flights, flights: [flight] }, step);
    const { reached } = found;
    const [before, after] = [inOrder(found.before), inOrder(found.after)];
    const key = JSON.stringify([reached, before, after]);
    const standards = [...(groups.get(key)?.standards ?? []), flight.standard];
    groups.set(key, { standards, reached, before, after });
  }
  return [...groups.values()];
}

/** Armed words come in the order in which they were met: two standards may say the same in another order. */
const inOrder = (modes: Possible): Possible => ({
  ...modes,
  armedCertain: modes.armedCertain.toSorted(),
  armedPossible: modes.armedPossible.toSorted(),
});

function fillOf(flights: Flights, on: readonly ModesOn[], step: Step): Fill {
  const [refused] = flights.refused;
  if (refused) return { because: `standard ${refused.standard} could not be explored: ${refused.because}` };
  const cut = flights.flights.find(({ found }) => !found.complete);
  if (cut) return { because: `standard ${cut.standard} was not explored to its end: ${cut.found.reason}` };
  const expect = expectedModes(flights, step);
  if (expect === null) return { because: 'no flight as written comes to this step' };
  const reached = on.filter((one) => one.reached);
  const open = AXES.flatMap((axis) => (Array.isArray(expect[axis]) ? [openAxis(axis, reached)] : []));
  if (expect.armed === null) open.push('what is armed after it is not the same in every case');
  return open.length === 0 ? { expect } : { because: open.join('; ') };
}

function openAxis(axis: (typeof AXES)[number], on: readonly ModesOn[]): string {
  const words = on.map(({ standards, after }) => {
    const where = on.length === 1 ? '' : ` on ${standardsWords(standards)}`;
    return `${after[axis].join(' or ')}${where}`;
  });
  return `${axis} may be ${words.join(', ')}`;
}
