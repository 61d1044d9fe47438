import { expect, test } from 'vitest';
import { readerBand } from '../../app/_ui/rail-rows.ts';
import { bandOver } from '../../lib/envelope/band.ts';
import { domainOf } from '../../lib/envelope/domain.ts';
import { defaultPolicy } from '../../lib/policy/policy.ts';
import { tn182 } from '../kit/sheets.ts';

const sheet = tn182();
const proof = bandOver(
  sheet,
  defaultPolicy,
  { flaps: ['F26', 'F35'], phase: 'finalApproach', gear: 'down' },
  domainOf(sheet),
)!;
const at = { weight: 58_000, elevation: 0, temperature: 0, wind: 0 };

test('an approved figure is shown as it was typed, and under no detent that the pilot may not have planned', () => {
  expect(readerBand(proof, at, { VREF: 121 })).toMatchObject({
    low: 121,
    lowName: 'VREF',
    high: 164,
    highName: 'VFE F35',
  });
});
test('without the approved figure none is computed from the weight', () => {
  expect(readerBand(proof, at, {})).toMatchObject({ low: null, lowName: 'VREF', high: 164 });
});
