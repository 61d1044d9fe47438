import type { ModeSet } from '../../aircraft/mode-set.ts';
import { asked, type Doing, pathWitness, sayUnasked } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const SELECTOR = /\baltitude selector\b|\bselected altitude\b/i;
const ZERO = /^(0|zero)(\s*ft)?\b(?![.,\d])/i;

/** A press after which the aircraft begins to climb or to descend. */
function begins({ step, line, after }: Doing, modes: ModeSet): boolean {
  const leads = (word: string): boolean => modes.climbing.includes(word) || modes.descending.includes(word);
  return step.verb === 'press' && after.some((next) => next.vertical !== line.vertical && leads(next.vertical));
}

export const selectedAltitudeVsClearance = defineRule({
  id: 'selected-altitude-vs-clearance',
  number: 64,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Selected altitude against clearance',
  says: 'Before a press begins a climb or descent the altitude selector has been set or read, or the entry line says what stands in it; it is never zero, and it is not set only behind the press.',
  why: 'An autopilot dived toward 0 ft after take-off: nobody had read the selector before.',
  source: { text: 'AAIB Bulletin 11/2018', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value'],
  messages: {
    zero: 'The altitude selector stands at "{value}": the guidance takes the aircraft to the ground.',
    unset: '{object} begins a climb or descent, and nothing has set or read the altitude selector before.',
    late: 'The altitude selector is set behind {object}: the press goes toward the old altitude.',
  },
  examples: {
    bad: '{phases: [climb], entry: {thrust: [GOVERN], vertical: [LEVEL], selectedAltitude: ""}, steps: [{cue: event "climb clearance", who: PF, verb: press, object: ASCENT}]}',
    good: '{phases: [climb], entry: {thrust: [GOVERN], vertical: [LEVEL], selectedAltitude: ""}, steps: [{cue: event "climb clearance", who: PF, verb: set, object: altitude selector, value: cleared level}, {cue: then, who: PF, verb: press, object: ASCENT}]}',
  },
  run({ procedure, states, flights, unasked, sheet }, report) {
    sayUnasked(flights, unasked);
    const entry = procedure.entry.selectedAltitude.trim();
    if (ZERO.test(entry)) {
      const at = { step: '', field: 'entry.selectedAltitude' };
      report({
        at,
        message: 'zero',
        data: { value: entry },
        witness: wordsOf('entry.selectedAltitude', entry),
        read: [entry],
      });
    }
    for (const { step } of states) {
      if (step.verb !== 'set' || !SELECTOR.test(step.object) || !ZERO.test(step.value.trim())) continue;
      report({
        at: { step: step.id, field: 'value' },
        message: 'zero',
        data: { value: step.value },
        witness: wordsOf('value', step.value),
      });
    }
    const touches = (index: number): boolean =>
      SELECTOR.test(`${states[index]?.step.object ?? ''} ${states[index]?.step.value ?? ''}`);
    const found = asked(flights, (doings, step) => {
      const index = states.findIndex((state) => state.step.id === step.id);
      const before = states.slice(0, index).some((state, k) => state.branch === states[index]!.branch && touches(k));
      const behind = states[index + 1];
      const late =
        behind !== undefined &&
        behind.step.verb === 'set' &&
        SELECTOR.test(behind.step.object) &&
        behind.gate.gate?.kind === 'then';
      const known = before || entry !== '' || states[index]!.branch !== null;
      const doing = doings.find((one) => begins(one, sheet.modes));
      return doing === undefined || (known && (!late || before)) ? null : { doing, end: doing.ends[0]! };
    });
    for (const { step, hits } of found) {
      const index = states.findIndex((state) => state.step.id === step.id);
      const late = touches(index + 1) && states[index + 1]!.step.verb === 'set';
      const at = { step: step.id as string, field: 'object' };
      report({
        at,
        message: late ? 'late' : 'unset',
        data: { object: step.object },
        witness: pathWitness(procedure, hits),
        read: [entry],
      });
    }
  },
});
