import { detentNames } from '../aircraft/limits.ts';
import { speedExpression } from '../aircraft/schedule.ts';
import { selfCheck } from '../aircraft/self-check.ts';
import type { Sheet, SheetProblem } from '../aircraft/sheet.ts';
import { type Expression, mul, number } from '../base/expression.ts';
import type { Comparison, SpeedName } from '../gate/syntax.ts';
import type { Compare } from './condition.ts';
import { type Domain, domainOf } from './domain.ts';
import { explain } from './explain.ts';
import { prove } from './prove.ts';

/** All that looks wrong in a sheet: what its text says, and what is proven over every weight that it allows. */
export function checkSheet(sheet: Sheet): readonly SheetProblem[] {
  const domain = domainOf(sheet);
  return [...selfCheck(sheet), ...speedOrder(sheet, domain), ...clearOfLimits(sheet, domain)];
}

type Side = { readonly name: string; readonly expression: Expression };

/** A sentence where the order isn't kept at every weight, or can't be told because a table ends. */
function expects(left: Side, op: Comparison, right: Side, domain: Domain, at: string, leads: string): SheetProblem[] {
  const question: Compare = {
    kind: 'compare',
    left: left.expression,
    op,
    right: right.expression,
    leftName: left.name,
    rightName: right.name,
    unit: 'kt',
  };
  const proof = prove(question, domain);
  return proof.verdict === 'holds' ? [] : [{ at, message: `${explain(question, proof)}${leads}` }];
}

/** CS and 14 CFR 25.107 and 25.125 (from memory): V1 ≤ VR ≤ V2; V2 at least 1.13, VREF at least 1.23 of the stall speed. */
const ORDER: readonly (readonly [SpeedName, number, SpeedName])[] = [
  ['V1', 1, 'VR'],
  ['VR', 1, 'V2'],
  ['VSR', 1, 'VMM'],
  ['VSR', 1.13, 'V2'],
  ['VSR', 1.23, 'VREF'],
];

function speedOrder(sheet: Sheet, domain: Domain): SheetProblem[] {
  return detentNames(sheet).flatMap((detent) => {
    const side = (name: SpeedName, factor = 1): Side | null => {
      const expression = speedExpression(sheet, { name, detent, icing: false });
      if (expression === null) return null;
      if (factor === 1) return { name: `${name} ${detent}`, expression };
      return { name: `${factor} ${name} ${detent}`, expression: mul(number(factor), expression) };
    };
    const kept = ORDER.flatMap(([lower, factor, upper]) => {
      const low = side(lower, factor);
      const high = side(upper);
      return low && high ? expects(low, '<=', high, domain, 'speeds', '') : [];
    });
    const v1 = side('V1');
    const floor = { name: 'the V1 floor', expression: number(sheet.limits.v1Floor.value) };
    return v1 ? [...kept, ...expects(v1, '>=', floor, domain, 'speeds', '')] : kept;
  });
}

/** VMM of a detent stays below the limits of this detent and of the next one, or the flap can't be moved. */
function clearOfLimits(sheet: Sheet, domain: Domain): SheetProblem[] {
  return sheet.detents.flatMap((detent, i) => {
    const expression = speedExpression(sheet, { name: 'VMM', detent: detent.name, icing: false });
    if (expression === null) return [];
    const vmm = { name: `VMM ${detent.name}`, expression };
    return [detent, sheet.detents[i + 1]].flatMap((other) => {
      if (!other?.vfe) return [];
      const vfe = { name: `VFE ${other.name} ${other.vfe.value} kt`, expression: number(other.vfe.value) };
      return expects(vmm, '<', vfe, domain, `detents.${i}`, ': no band is left');
    });
  });
}
