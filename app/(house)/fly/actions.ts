'use server';
import { z } from 'zod';
import { action } from '../../../lib/server/action.ts';
import { keepFlight } from '../../../lib/server/flights.ts';

const amount = z.number().finite();
/** What a person sets; the rest is the card's and the policy's. */
const conditions = z.strictObject({
  weight: amount,
  ...{ elevation: amount.optional(), temperature: amount.optional(), wind: amount.optional() },
  ...{ windGradient: amount.optional(), enginesOut: z.number().int().min(0).max(4).optional() },
  ...{ standard: z.string().max(40).optional(), detent: z.string().max(40).optional() },
  ...{ selectedAltitude: amount.optional(), missedApproachAltitude: amount.optional() },
  ...{ climbThrustHeight: amount.optional(), accelerationHeight: amount.optional() },
  ...{ engineOutAccelerationHeight: amount.optional(), transitionAltitude: amount.optional() },
  ...{
    minima: amount.optional(),
    finalApproachFix: amount.optional(),
    track: amount.optional(),
    turnTo: amount.optional(),
  },
});

export const keep = action(
  z.object({ candidateId: z.string(), conditions, note: z.string().trim().max(2_000) }),
  (viewer, input) => keepFlight(viewer, { ...input, conditions: set(input.conditions) }),
);

/** Without the keys that nobody set. */
function set(given: z.output<typeof conditions>): Parameters<typeof keepFlight>[1]['conditions'] {
  const some = Object.entries(given).filter(([, value]) => value !== undefined);
  return Object.fromEntries(some) as Parameters<typeof keepFlight>[1]['conditions'];
}
