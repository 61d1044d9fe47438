// Scenario 5 of the acceptance scenarios: the approach in the cold, copied from the one that is for all weathers.
import { describe, expect, it } from 'vitest';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { askedOf, ofCheck, stopsOf } from '../kit/asked.ts';
import { edited, reworded, stepOf, withSteps } from '../kit/mutate.ts';
import { seedProcedure } from '../kit/seed.ts';

const check = (label: string, distance: string, value: string) =>
  ({
    label,
    cue: `distance to "runway end" <= ${distance}`,
    who: 'PM',
    verb: 'check',
    object: 'altitude',
    value,
    checkBy: 'PF',
    checkSees: 'the same',
  }) as const;

/** The altitudes of the card put into the base approach, as charted; two steps of a table without their reference. */
const copied: Procedure = (() => {
  const base = seedProcedure('instrument-approach');
  const cold = { ...base, title: 'Approach at QVDS, −28 °C', class: 'cold-weather' } as const;
  const entered = { ...cold, entry: { ...cold.entry, selectedAltitude: '1 500 ft MSL' } };
  const fix = reworded(entered, 'IA-14', 'value', 'the altitude of the card', '1 500 ft MSL');
  const missed = edited(fix, 'IA-13', { value: 'missed-approach altitude 3 000 ft MSL' });
  const note = 'The minima are DA 420 ft MSL. Corrections are those of the cold temperature table of the State.';
  const minima = edited(missed, 'IA-22', { note });
  return withSteps(
    minima,
    'IA-14',
    check('IA-91', '4 NM', 'step-down 900 ft MSL'),
    check('IA-92', '3.5 NM', '1 300 ft by the table'),
    check('IA-93', '3.2 NM', '1 150 ft by the table'),
  );
})();

const departure = { ...seedProcedure('normal-take-off'), title: 'Departure at QVDS, −28 °C' };

describe('approach at QVDS at −28 °C', () => {
  const { findings } = askedOf(copied);
  const cold = ofCheck(findings, 'cold-altitudes');
  it('is stopped by the cold and by the missing references, and by nothing else', () =>
    expect(stopsOf(findings)).toEqual(['altitude-reference-missing', 'cold-altitudes']));

  it.each([
    ['IA-14', 'final approach fix', '1 500', '1 742', '1 800'],
    ['IA-91', 'step-down', '900', '1 037', '1 100'],
    ['IA-22', 'DA', '420', '472', '480'],
    ['IA-13', 'missed-approach altitude', '3 000', '3 508', '3 600'],
  ])('%s: %s %s ft is %s ft, set %s ft', (label, name, charted, corrected, set) => {
    const found = cold.filter(({ at }) => at.step === stepOf(copied, label).id);
    expect(found.map(({ message }) => message)).toEqual([
      expect.stringContaining(`${name} ${charted} ft at QVDS, −28 °C: ${corrected} ft is to be flown, set ${set} ft`),
    ]);
    expect(found[0]?.fix?.value).toContain(`${set} ft`);
  });

  it('asks for the words to the controller, and for no table: it is named', () => {
    const procedure = cold.filter(({ at }) => at.step === '' && at.field === 'steps').map(({ message }) => message);
    expect(procedure).toEqual([expect.stringContaining('No step advises ATC')]);
  });

  it('misses the reference on two steps', () => {
    const found = ofCheck(findings, 'altitude-reference-missing').map(({ at }) => at.step);
    expect(found).toEqual([stepOf(copied, 'IA-92').id, stepOf(copied, 'IA-93').id]);
  });

  it('leaves the stable gate 1 000 ft AAL alone, and departures', () => {
    expect(findings.filter(({ at }) => at.step === stepOf(copied, 'IA-20').id)).toEqual([]);
    expect(stopsOf(askedOf(departure).findings)).toEqual([]);
  });
});
