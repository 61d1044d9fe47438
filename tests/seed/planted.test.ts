// The demo procedures are clean because they are right, not because the checks are blind: one defect, one finding.
import { expect, test } from 'vitest';
import { checkProcedure } from '../../lib/check/check.ts';
import { defaultPolicy } from '../../lib/policy/policy.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import {
  edited,
  heavier,
  reworded,
  selects,
  stepOf,
  unstated,
  withoutActor,
  withoutCue,
  withoutDetent,
  withoutReference,
  withoutReply,
  withoutUnit,
} from '../kit/mutate.ts';
import { seedProcedure, seedSheet } from '../kit/seed.ts';

type Plant = (procedure: Procedure) => Procedure;
/** Check, procedure, step where it shows ('' = the procedure itself), what was done. */
const DEFECTS: readonly (readonly [number, string, string, string, Plant])[] = [
  [1, 'instrument-approach', 'IA-10', 'nobody moves the lever', (p) => withoutActor(p, 'IA-10')],
  [
    1,
    'climb-altitude-change',
    'CL-03',
    'the hand that does not fly the panel',
    (p) => edited(p, 'CL-03', { who: 'PM' }),
  ],
  [2, 'engine-out-take-off', 'EO-05', 'both at one gear lever', (p) => edited(p, 'EO-05', { who: 'each' })],
  [5, 'holding', 'HO-18', 'a call into silence', (p) => withoutReply(p, 'HO-18')],
  [7, 'climb-altitude-change', 'CL-14', 'no cue', (p) => withoutCue(p, 'CL-14')],
  [22, 'holding', '', 'no armed words and no speed at the end', (p) => unstated(p, 'exit', 'armed', 'speed')],
  [32, 'climb-altitude-change', 'CL-07', '290 of what', (p) => withoutUnit(p, 'CL-07', 'value')],
  [32, 'instrument-approach', 'IA-23', 'above 120 of what', (p) => withoutUnit(p, 'IA-23', 'value')],
  [33, 'instrument-approach', 'IA-20', 'a gate above what', (p) => withoutReference(p, 'IA-20', 'cue')],
  [
    34,
    'instrument-approach',
    'IA-18',
    'a reference speed of no detent',
    (p) => edited(p, 'IA-18', { value: 'VREF + 5 kt' }),
  ],
  [34, 'engine-out-take-off', 'EO-16', 'VMM of no detent', (p) => withoutDetent(p, 'EO-16', 'cue')],
  [
    38,
    'instrument-approach',
    'IA-10',
    'F18 at 205 kt',
    (p) => reworded(p, 'IA-10', 'cue', 'VFE F18 - 5 kt', 'VFE F12 - 5 kt'),
  ],
  [39, 'holding', 'HO-24', 'F0 at 180 kt', (p) => reworded(p, 'HO-24', 'cue', 'VMM F0', '180 kt')],
  [40, 'instrument-approach', 'IA-07', 'F6 to F18', (p) => selects(p, 'IA-07', 'F18')],
  [41, 'instrument-approach', 'IA-17', 'an overweight landing with F35', (p) => heavier(p, 46_000, 78_600)],
  [45, 'instrument-approach', 'IA-11', 'F18 and 200 kt', (p) => edited(p, 'IA-11', { value: '200 kt' })],
  [
    61,
    'engine-out-take-off',
    'EO-11',
    'autopilot below the gate before it',
    (p) => reworded(p, 'EO-11', 'cue', '600', '300'),
  ],
];

test.each(DEFECTS)('check %i, %s %s: %s', (number, name, label, _says, plant) => {
  const facts = { sheet: seedSheet(), policy: defaultPolicy };
  const whole = seedProcedure(name);
  const found = (procedure: Procedure) => checkProcedure(procedure, facts).findings.filter((f) => f.number === number);
  expect(found(whole)).toEqual([]);
  const at = label === '' ? '' : stepOf(whole, label).id;
  expect(found(plant(whole)).map((finding) => finding.at.step)).toContain(at);
});
