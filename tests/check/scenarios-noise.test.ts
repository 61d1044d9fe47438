// Scenario 3 of the acceptance scenarios, its figures: a draft for a close-in aerodrome accelerates before it reduces thrust.
import { describe, expect, it } from 'vitest';
import { askedOf, ofCheck, stopsOf } from '../kit/asked.ts';
import { edited, expects, movedBehind, reworded } from '../kit/mutate.ts';
import { seedProcedure } from '../kit/seed.ts';

const seeded = { ...seedProcedure('normal-take-off'), title: 'Noise departure at QHLM' };

/** Accelerates at 1 000 ft AAL, reduces at 1 500 ft AAL, with the words that the machine then shows. */
const draft = (() => {
  const ordered = movedBehind(seeded, 'TO-16', 'TO-17');
  const accelerates = expects(reworded(ordered, 'TO-17', 'cue', 'acceleration altitude', '1 000 ft AAL'), 'TO-17', {
    thrust: 'LATCHED',
  });
  const reduces = edited(accelerates, 'TO-16', { cue: 'height >= 1 500 ft AAL', note: '' });
  return expects(reduces, 'TO-16', { vertical: 'ASCENT' });
})();
const corrected = reworded(
  edited(seeded, 'TO-16', { cue: 'height >= 1 500 ft AAL' }),
  'TO-17',
  'cue',
  'acceleration altitude',
  '3 000 ft AAL',
);

describe('noise departure at QHLM, accelerate 1 000, reduce 1 500', () => {
  const { findings } = askedOf(draft);
  it('is stopped by the order of the close-in class, and by nothing else', () => {
    expect(stopsOf(findings)).toEqual(['reduce-and-accelerate-order']);
    const [stop, ...more] = ofCheck(findings, 'reduce-and-accelerate-order');
    expect(more).toEqual([]);
    expect(stop?.message).toContain('QHLM is close-in: 1 000 ft AAL for acceleration comes before 1 500 ft AAL');
    expect(stop?.witness).toMatchObject({ says: 'acceleration 1 000 ft AAL, thrust reduction 1 500 ft AAL' });
  });
  it('is in order at 1 500 and 3 000', () => expect(stopsOf(askedOf(corrected).findings)).toEqual([]));
  it('is in order by the names of the card', () => expect(stopsOf(askedOf(seeded).findings)).toEqual([]));
});
