// Defects of words: verbs, names, units, references.
import { toldBy } from '../../../lib/check/told.ts';
import type { Procedure, ProcedureId, Step } from '../../../lib/procedure/procedure.ts';
import {
  atSteps,
  type Base,
  changed,
  first,
  firstIn,
  isFlap,
  isGear,
  isHand,
  type Mutant,
  one,
  type Plants,
} from './plant.ts';

const FIELDS = ['value', 'cue', 'checkSees'] as const;
const UNIT = /(\d) ?(kt|ft\/min|NM|%|min)(?![\w/])/;
const REFERENCE = / (AAL|MSL)\b/;
const DETENT = /\b(VREF|VMM|VFE) [A-Z]+\d*/;

/** The procedure beside a copy of it, as the operator's other text, with one step that belongs to one family in both. */
export function besideCopies(
  { procedure, facts }: Base,
  copies: number,
  change: (step: Step) => Partial<Step>,
  says: string,
): readonly Mutant[] {
  const fitting = procedure.steps.filter(
    (step) => isHand(step) && step.value !== '' && step.family === '' && step.label !== '',
  );
  return fitting.slice(0, 2).map((step): Mutant => {
    const family = { family: 'planted-family', why: '' };
    const there = Array.from({ length: copies }, (_, index): Procedure => {
      const copy = changed(procedure, step, { ...family, id: `copy-${index}` as Step['id'] });
      return {
        ...copy,
        id: `pr_copy${index}` as ProcedureId,
        title: `Copy ${index + 1}`,
        steps: copy.steps.filter(({ id }) => id.startsWith('copy-')),
        branches: [],
      };
    });
    const others = [...(facts.others ?? []), ...there.map(toldBy)];
    return {
      says: `${step.label} ${says}`,
      procedure: changed(procedure, step, { ...family, ...change(step) }),
      facts: { others },
    };
  });
}

export const WORDING: Plants = {
  'two-actions-one-step': (base) =>
    atSteps(base, isHand, ({ object }) => ({ object: `${object} and arm approach` }), 'has a second action'),
  'not-a-command': (base) =>
    atSteps(base, isHand, ({ object }) => ({ object: `the ${object} should be selected` }), 'is told to nobody'),
  'negative-wording': (base) =>
    atSteps(
      base,
      (step) => isHand(step) && step.value !== '',
      ({ value }) => ({ value: `${value} unless the speed is too high` }),
      'is turned round',
    ),
  'elastic-words': (base) => atSteps(base, isHand, () => ({ value: 'as required' }), 'is as required'),
  'undefined-abbreviation': (base) =>
    atSteps(
      base,
      (step) => isHand(step) && step.value !== '',
      ({ value }) => ({ value: `${value}, then PSR` }),
      'has letters that nobody explains',
    ),
  'undefined-actor-word': (base) =>
    atSteps(
      base,
      ({ checkBy }) => checkBy !== '',
      () => ({ checkBy: 'pilot' }),
      'is checked by a pilot',
    ),
  'two-names-one-thing': (base) =>
    atSteps(
      base,
      (step) => isFlap(step) || isGear(step),
      ({ object }) => ({ object: object.replace(/lever|handle/, 'knob') }),
      'is done with a knob',
    ),
  'sound-alike-calls': (base) =>
    atSteps(
      base,
      isHand,
      ({ who }) => ({ orderBy: who === 'PF' ? 'PM' : 'PF', orderWords: 'line up and wait' }),
      'is ordered like a clearance',
    ),
  'shall-should-drift': (base) =>
    atSteps(
      base,
      ({ verb, checkSees }) => verb !== '' && checkSees !== '',
      () => ({ checkSees: 'speed should not exceed 245 kt' }),
      'has a limit that is a wish',
    ),
  'unit-missing': (base) =>
    atSteps(
      base,
      (step) => Object.keys(firstIn(step, FIELDS, UNIT, '$1')).length > 0,
      (step) => firstIn(step, FIELDS, UNIT, '$1'),
      'has a figure without its unit',
    ),
  'altitude-reference-missing': (base) =>
    atSteps(
      base,
      (step) => Object.keys(firstIn(step, ['cue', 'value'], REFERENCE, '')).length > 0,
      (step) => firstIn(step, ['cue', 'value'], REFERENCE, ''),
      'has a height above what',
    ),
  'speed-reference-missing': (base) =>
    atSteps(
      base,
      (step) => Object.keys(firstIn(step, ['cue', 'value'], DETENT, '$1')).length > 0,
      (step) => firstIn(step, ['cue', 'value'], DETENT, '$1'),
      'has a reference speed of no detent',
    ),
  'direction-words': ({ procedure }) => {
    const set = (value: string) =>
      first(procedure, { cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value });
    return [
      ...one('reduced upwards', set('reduce to 210 kt from 190 kt')),
      ...one('increased downwards', set('increase to 190 kt from 210 kt')),
    ];
  },
  'label-not-in-mode-set': (base) => [
    ...atSteps(
      base,
      ({ expect }) => expect.vertical !== '',
      ({ expect }) => ({ expect: { ...expect, vertical: 'HOLD' } }),
      'expects a word that is not there',
    ),
    ...atSteps(
      base,
      ({ verb }) => verb === 'press',
      () => ({ object: 'HOLD' }),
      'presses what is not there',
    ),
  ],
  'same-words-different-value': (base) =>
    besideCopies(base, 1, () => ({ value: 'another value' }), 'has another value than its copy'),
};
