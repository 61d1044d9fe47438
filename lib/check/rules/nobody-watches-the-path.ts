import type { ModeSet } from '../../aircraft/mode-set.ts';
import { variablesOf } from '../../gate/variables.ts';
import type { StepState } from '../../procedure/walk.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder } from '../witness.ts';

const FIX = /\bfinal approach (fix|point)\b|\bFAF\b/i;
const ALTITUDE = /\b(altitude|height)s?\b/i;
const PLACE = /\b(NM|miles?|distance|table|card|chart|fix)\b/i;
const TOLERANCE = /(±|\+\/-|within|plus or minus|at most|no more than)\s*\d[\d\s]*ft\b/i;
const EVERY = /\bevery\b/i;
const REPEATED = /\b(each|every)\b/i;

export const nobodyWatchesThePath = defineRule({
  id: 'nobody-watches-the-path',
  number: 72,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: ['approach', 'landing'],
  title: 'Nobody watches the path',
  says: 'After the final approach fix, a vertical mode that follows no signal of the runway is watched: a pilot compares altitude with distance, more than once, with a tolerance in feet.',
  why: 'Once the angle was set nobody was told to look: the wind moved the path, and the aircraft came down short of the runway.',
  source: { text: 'TSB A15H0002', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'who', 'object', 'value', 'say', 'checkBy', 'checkSees', 'note', 'expect'],
  messages: {
    nobody: '{mode} follows no signal, and nobody compares altitude with distance: the path can sink unseen.',
    once: '{mode} follows no signal, and altitude and distance are compared only once: what comes later is not seen.',
    'no-tolerance': 'Altitude is compared with distance, but nothing says how many feet are too many: nobody calls it.',
  },
  examples: {
    bad: '{phases: [approach], steps: [{cue: event "final approach fix passed", who: PF, verb: select, object: path angle, value: 3.0°}]}',
    good: '{phases: [approach], steps: [{cue: event "final approach fix passed", who: PF, verb: select, object: path angle, value: 3.0°}, {cue: then, who: PM, verb: call, object: altitude, value: "each NM, against the table", checkBy: PF, checkSees: within 75 ft}]}',
  },
  run({ states, sheet, unasked }, report) {
    const main = states.filter(({ branch }) => branch === null);
    const fix = main.findIndex(({ step }) => FIX.test(`${step.cue} ${step.object} ${step.value}`));
    if (fix < 0) return;
    const locked = followsSignal(sheet.modes);
    const final = main.slice(fix);
    const end = final.findIndex((here) => here.done.goingAround || atTheRunway(here));
    const path = end < 0 ? final : final.slice(0, end);
    const open = path.find(({ done }) => done.modes.vertical.some((word) => !locked.has(word)));
    if (open === undefined) {
      const unknown = path.find(({ done }) => done.modes.vertical.length === 0);
      if (unknown !== undefined)
        unasked('nothing says which mode flies the final path', { step: unknown.step.id, field: 'expect' });
      return;
    }
    const watches = path.filter(isWatch);
    const at = { step: open.step.id as string, field: 'checkSees' };
    const mode = open.done.modes.vertical.filter((word) => !locked.has(word)).join(' or ');
    const read = [mode, ...watches.map(({ step }) => step.id)];
    if (watches.length === 0) report({ at, message: 'nobody', data: { mode }, witness: absent('checkSees'), read });
    else if (watches.length === 1 && !watches.some(repeated)) {
      const only = watches[0]!.step;
      const witness = inOrder(open.step.id, only.id, `compared once: ${only.cue}`);
      report({ at, message: 'once', data: { mode }, witness, read });
    }
    const bare =
      watches.length > 0 && !watches.some(({ step }) => TOLERANCE.test(`${step.value} ${step.checkSees} ${step.note}`));
    if (!bare) return;
    const place = { step: watches[0]!.step.id as string, field: 'checkSees' };
    report({ at: place, message: 'no-tolerance', witness: absent('checkSees'), read });
  },
});

/** Vertical modes that the guidance leaves when a signal is lost. */
function followsSignal(modes: ModeSet): ReadonlySet<string> {
  const ids = new Set(
    (modes.environment ?? []).filter(({ says }) => /\bsignal/i.test(says)).flatMap(({ rules }) => rules),
  );
  const lost = modes.rules.filter((rule) => ids.has(rule.id) || /\bsignal\b.*\blost\b/i.test(rule.event));
  const guards = lost.flatMap((rule) => ('any' in rule ? rule.any.map(({ when }) => when) : [rule.when]));
  return new Set(guards.flatMap(({ vertical }) => (vertical !== undefined && 'in' in vertical ? vertical.in : [])));
}

const measured = ({ gate }: StepState): readonly string[] =>
  gate.gate === null ? [] : variablesOf(gate.gate).measures;
/** From here the eyes are outside. */
const atTheRunway = (here: StepState): boolean => measured(here).includes('radio-height');
const textOf = ({ step }: StepState): string =>
  `${step.object} ${step.value} ${step.say} ${step.checkSees} ${step.note}`;
const isWatch = (here: StepState): boolean =>
  here.step.who !== '' &&
  ALTITUDE.test(textOf(here)) &&
  (PLACE.test(textOf(here)) || measured(here).includes('distance') || EVERY.test(here.step.cue));
const repeated = (here: StepState): boolean => REPEATED.test(textOf(here)) || EVERY.test(here.step.cue);
