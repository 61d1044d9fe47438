// Every gate of the demo procedures comes to a number, or says why it does not.
import { expect, test } from 'vitest';
import { domainOf } from '../../lib/envelope/domain.ts';
import { termExpression } from '../../lib/envelope/gate-terms.ts';
import { extentOf } from '../../lib/envelope/prove.ts';
import { parseGate } from '../../lib/gate/parse.ts';
import { printTerm } from '../../lib/gate/print.ts';
import type { Term } from '../../lib/gate/syntax.ts';
import { visitGate } from '../../lib/gate/visit.ts';
import { defaultPolicy } from '../../lib/policy/policy.ts';
import { allSteps } from '../../lib/procedure/procedure.ts';
import { procedureNames, seedLibrary, seedProcedure, seedSheet } from '../kit/seed.ts';

const sheet = seedSheet();
const card = seedLibrary().aerodromes.find((each) => each.code === 'QVDS')!;
const altitudes = {
  'climb-thrust-altitude': card.climbThrustHeight,
  'acceleration-altitude': card.accelerationHeight,
  'engine-out-acceleration-altitude': card.engineOutAccelerationHeight,
  'transition-altitude': card.transitionAltitude,
  minima: card.minima.altitude,
  'missed-approach-altitude': card.missedApproachAltitude,
};

/** The only things that no sheet and no card can give. */
const REASONS = [
  /^(V1|VR|V2|VREF|VAPP) needs a detent$/,
  /^selected altitude stands on the aerodrome card, and none is given$/,
  /^the (go-around |take-off )?target depends on what was flown before$/,
];

test.each(procedureNames())('%s', (name) => {
  const procedure = seedProcedure(name);
  const texts = [
    ...allSteps(procedure).flatMap((step) => [step.cue, ...step.branch.map((way) => way.when)]),
    ...procedure.branches.map((branch) => branch.when),
  ];
  const domain = domainOf(sheet, { weight: procedure.envelope.weight });
  let numbers = 0;
  for (const text of texts) {
    const sides: Term[] = [];
    visitGate(parseGate(text).gate!, {
      gate: (gate) => {
        if (gate.kind === 'compare') sides.push(gate.right);
        if (gate.kind === 'window') sides.push(gate.low, gate.high);
        if ('delay' in gate && gate.delay !== null) sides.push(gate.delay);
      },
    });
    for (const term of sides) {
      const value = termExpression(term, { sheet, policy: defaultPolicy, altitudes });
      if (!value.ok) {
        expect(
          REASONS.some((reason) => reason.test(value.error)),
          `${text}: ${value.error}`,
        ).toBe(true);
        continue;
      }
      const extent = extentOf(value.value.expression, domain);
      expect(extent, `${text}: ${printTerm(term)}`).not.toBeNull();
      numbers += 1;
    }
  }
  expect(numbers).toBeGreaterThan(0);
});
