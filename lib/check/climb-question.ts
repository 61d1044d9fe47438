// Gradients and rates of climb over the whole envelope. Every question goes to the prover, and is asked once of a sheet.
import { climbRateExpression, type Segment, segmentGradient } from '../aircraft/climb.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import { type Expression, number } from '../base/expression.ts';
import { compare } from '../envelope/condition.ts';
import { axis, type Domain, domainOf, pinned } from '../envelope/domain.ts';
import { extentOf, type Point, prove } from '../envelope/prove.ts';
import type { Procedure } from '../procedure/procedure.ts';

export type ClimbVerdict =
  | { readonly kind: 'holds' }
  /** `worst`: the figure at `at`. `limit`: the heaviest weight at which it still holds, kg; null: there is none. `there`:
   *  the figure at that weight, whole hundreds of kg, in the same place. */
  | {
      readonly kind: 'fails';
      readonly worst: number;
      readonly at: Point;
      readonly limit: number | null;
      readonly there: number | null;
    }
  | { readonly kind: 'undecided'; readonly because: string };

const answers = new WeakMap<Sheet, Map<string, ClimbVerdict | null>>();

function onceOf(sheet: Sheet, key: string, make: () => ClimbVerdict | null): ClimbVerdict | null {
  let known = answers.get(sheet);
  if (known === undefined) answers.set(sheet, (known = new Map()));
  const before = known.get(key);
  if (before !== undefined) return before;
  const made = make();
  known.set(key, made);
  return made;
}

/** Weights that are found to a tenth of a tonne are said rounded to the safe side. */
const TENTH = 100;

/** The least value where some of the variables are given and the others are free. */
function valueAt(expression: Expression, domain: Domain, at: Point): number | null {
  const place = Object.entries(at).reduce((all, [name, value]) => pinned(all, name, value), domain);
  return extentOf(expression, place)?.least.value ?? null;
}

function ask(expression: Expression, least: number, domain: Domain): ClimbVerdict {
  const proof = prove(compare(expression, '>=', number(least)), domain);
  if (proof.verdict === 'holds') return { kind: 'holds' };
  if (proof.verdict === 'undecided') return { kind: 'undecided', because: proof.because };
  const above = proof.from?.side === 'above' && proof.from.variable === 'weight' ? proof.from.at : null;
  const limit = above === null ? null : Math.floor(above / TENTH) * TENTH;
  return {
    kind: 'fails',
    worst: least + proof.worst,
    at: proof.witness,
    limit,
    there: limit === null ? null : valueAt(expression, domain, { ...proof.witness, weight: limit }),
  };
}

/** Whether a gradient, gross per cent, is at least so much; null where the sheet has no speed for the detent. */
export function gradientOver(
  sheet: Sheet,
  segment: Segment,
  detent: string,
  least: number,
  domain: Domain,
): ClimbVerdict | null {
  return onceOf(sheet, `${segment} ${detent} ${least} ${JSON.stringify(domain)}`, () => {
    const expression = segmentGradient(sheet, segment, detent);
    return expression === null ? null : ask(expression, least, domain);
  });
}

/** Whether the clean aircraft at climb thrust climbs at least so fast, ft/min, at a speed, over the domain. */
export function climbOver(sheet: Sheet, speed: Expression, least: number, domain: Domain, key: string): ClimbVerdict {
  const clean = sheet.detents[0]!.name;
  const setting = { detent: clean, gear: 'up', rating: 'climb' } as const;
  const asked = onceOf(sheet, `rate ${key} ${least} ${JSON.stringify(domain)}`, () =>
    ask(climbRateExpression(sheet, setting, speed), least, domain),
  );
  return asked ?? { kind: 'undecided', because: 'the sheet has no clean detent' };
}

/** The ranges of a climb: those of the procedure, at one place where it is known, up to a weight where one is stated, kg.
 *  null where nothing is left of the weights. */
export function climbDomain(
  procedure: Procedure,
  sheet: Sheet,
  place: { readonly elevation: number | null; readonly heaviest: number },
): Domain | null {
  const { envelope } = procedure;
  const whole = domainOf(sheet, envelope);
  const weight = whole.find((one) => one.name === 'weight')!;
  const to = envelope.weight === null ? Math.min(weight.to, place.heaviest) : Math.min(weight.to, envelope.weight.to);
  const top = Math.min(to, place.heaviest);
  if (top < weight.from) return null;
  const cut = whole.map((one) => (one.name === 'weight' ? axis('weight', weight.from, top, 'kg') : one));
  return place.elevation === null ? cut : pinned(cut, 'elevation', place.elevation);
}
