// Scenario 6 of the acceptance scenarios, its figures: QSTR at ISA+25, a take-off with F18 and a go-around with an engine out.
import { describe, expect, it } from 'vitest';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { askedOf, ofCheck, stopsOf } from '../kit/asked.ts';
import { edited } from '../kit/mutate.ts';
import { seedProcedure } from '../kit/seed.ts';

const hot = { from: -40, to: 25 };

function takeOff(...detents: readonly string[]): Procedure {
  const base = seedProcedure('normal-take-off');
  return {
    ...base,
    title: 'F18 take-off, all aerodromes',
    effectivity: { ...base.effectivity, note: 'Also at QSTR, ISA+25.' },
    weightLimit: '',
    envelope: { ...base.envelope, detents, temperature: hot },
    entry: { ...base.entry, flaps: detents },
  };
}

/** Copied from the one for all engines, and one gate changed. */
const goAround: Procedure = edited(
  (() => {
    const base = seedProcedure('go-around');
    const envelope = { ...base.envelope, temperature: hot };
    const head = { title: 'Engine-out go-around at QSTR', class: 'engine-out', weightLimit: '' } as const;
    return { ...base, ...head, id: 'pr_copied' as Procedure['id'], envelope };
  })(),
  'GA-12',
  { cue: 'height >= 1 000 ft and vertical = LIFT / ASCENT' },
);

describe('F18 take-off, all aerodromes', () => {
  it('is stopped by the gradient alone', () =>
    expect(stopsOf(askedOf(takeOff('F18')).findings)).toEqual(['climb-gradient-short']));

  it.each([
    ['F18', '63.3', '2.42', '1.62'],
    ['F12', '67.3', '2.41', '1.61'],
    ['F6', '71.4', '2.40', '1.60'],
  ])('%s holds up to %s t: %s %% gross, %s %% net, more than the obstacle asks', (detent, tonnes, gross, net) => {
    const [found, ...more] = ofCheck(askedOf(takeOff(detent)).findings, 'climb-gradient-short');
    expect(more).toEqual([]);
    expect(found?.message).toContain(`${detent} the second segment needs 2.4 % gross`);
    expect(found?.message).toContain(
      `up to ${tonnes} t, ${gross} % gross there, ${net} % net against 1.38 % for the obstacle`,
    );
  });

  it('passes with its limit written down', () => {
    const limited = { ...takeOff('F18'), weightLimit: 'F18 at most 63.3 t' };
    expect(stopsOf(askedOf(limited).findings)).toEqual([]);
  });
});

describe('go-around with an engine out, copied from all engines', () => {
  const { findings } = askedOf(goAround, [seedProcedure('go-around')]);
  it('is stopped by the gradient and by the gate without its reference', () =>
    expect(stopsOf(findings)).toEqual(['altitude-reference-missing', 'climb-gradient-short']));

  it('has 2.39 % at 66.8 t: 66.2 t for 2.5 %, 63.7 t for 3.0 %', () => {
    const said = ofCheck(findings, 'climb-gradient-short').map(({ message }) => message);
    expect(said).toHaveLength(2);
    expect(said[0]).toContain('needs 2.5 % gross and has 2.39 % at 66.8 t at QSTR: it holds up to 66.2 t');
    expect(said[1]).toContain('needs 3 % gross and has 2.39 % at 66.8 t at QSTR: it holds up to 63.7 t');
  });

  it('wants the gate above the aerodrome, and the copy to say where it differs', () => {
    const [gate] = ofCheck(findings, 'altitude-reference-missing');
    expect(gate?.fix?.value).toContain('1 000 ft AAL');
    expect(ofCheck(findings, 'engine-out-twin-missing').map(({ severity }) => severity)).toEqual(['ANSWER']);
  });
});
