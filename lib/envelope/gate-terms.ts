import { detentNames } from '../aircraft/limits.ts';
import { speedExpression } from '../aircraft/schedule.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import { add, type Expression, max, min, mul, number, sub, variable } from '../base/expression.ts';
import { err, ok, type Result } from '../base/result.ts';
import type { Gate, GateUnit, Measure, NamedAltitude, Term } from '../gate/syntax.ts';
import type { Condition } from './condition.ts';

/** What of the policy a term needs; the policy itself fits. kt. */
export type TermPolicy = {
  readonly speeds: {
    readonly cleanSpeedAddition: number;
    readonly approachAddition: { readonly least: number; readonly most: number; readonly headWindShare: number };
  };
};

export type TermContext = {
  readonly sheet: Sheet;
  readonly policy: TermPolicy;
  /** From the aerodrome card, ft above the aerodrome or above sea level as the card has them; absent without one. */
  readonly altitudes?: Readonly<Partial<Record<NamedAltitude, number>>>;
};

/** Units after conversion: kt, M, ft, NM, ft/min, %, s, °C, °, kg. */
export type TermUnit = 'kt' | 'M' | 'ft' | 'NM' | 'ft/min' | '%' | 's' | '°C' | '°' | 'kg';
export type TermValue = { readonly expression: Expression; readonly unit: TermUnit; readonly name: string };

/** Exact factors: international foot, nautical mile and avoirdupois pound. */
const CONVERTED: Readonly<Record<GateUnit, readonly [TermUnit, number]>> = {
  kt: ['kt', 1],
  M: ['M', 1],
  ft: ['ft', 1],
  m: ['ft', 1 / 0.3048],
  NM: ['NM', 1],
  km: ['NM', 1 / 1.852],
  'ft/min': ['ft/min', 1],
  '%': ['%', 1],
  s: ['s', 1],
  min: ['s', 60],
  '°C': ['°C', 1],
  '°': ['°', 1],
  t: ['kg', 1000],
  kg: ['kg', 1],
  lb: ['kg', 0.45359237],
};

const MEASURED: Readonly<Record<Measure, TermUnit>> = {
  speed: 'kt',
  'target-speed': 'kt',
  mach: 'M',
  'ground-speed': 'kt',
  height: 'ft',
  'radio-height': 'ft',
  altitude: 'ft',
  'flight-level': 'ft',
  'vertical-speed': 'ft/min',
  thrust: '%',
  weight: 'kg',
  temperature: '°C',
  wind: 'kt',
  distance: 'NM',
  deviation: 'NM',
  bank: '°',
};

/**
 * A term of a gate as a formula with its unit, or the reason why there is none. A measure becomes a variable of its own
 * name (`speed`, `weight`, `wind`); speeds of the sheet speak of `weight`, VAPP of `wind` too.
 */
export function termExpression(term: Term, context: TermContext): Result<TermValue, string> {
  switch (term.kind) {
    case 'amount': {
      if (term.reference === 'FL')
        return ok({ expression: number(term.value * 100), unit: 'ft', name: `FL ${term.value}` });
      const [unit, factor] = CONVERTED[term.unit];
      const reference = term.reference === null ? '' : ` ${term.reference}`;
      return ok({ expression: number(term.value * factor), unit, name: `${term.value} ${term.unit}${reference}` });
    }
    case 'speed':
      return speedTerm(term, context);
    case 'altitude': {
      const value = context.altitudes?.[term.name];
      const name = term.name.replaceAll('-', ' ');
      if (value === undefined) return err(`${name} stands on the aerodrome card, and none is given`);
      return ok({ expression: number(value), unit: 'ft', name });
    }
    case 'target':
      return err(`the ${term.name} depends on what was flown before`);
    case 'measure':
      return ok({
        expression: variable(term.measure),
        unit: MEASURED[term.measure],
        name: term.measure.replaceAll('-', ' '),
      });
    case 'sum':
    case 'extreme':
      return combined(term, context);
  }
}

function speedTerm(term: Extract<Term, { kind: 'speed' }>, { sheet, policy }: TermContext): Result<TermValue, string> {
  const { name, detent, icing } = term;
  const said = `${name}${detent === null ? '' : ` ${detent}`}${icing ? ' icing' : ''}`;
  if (name === 'MMO') return ok({ expression: number(sheet.limits.mmo.value), unit: 'M', name: said });
  if (name === 'MLE') return ok({ expression: number(sheet.limits.gear.mle.value), unit: 'M', name: said });
  const expression = policySpeed(term, sheet, policy) ?? speedExpression(sheet, { name, detent, icing });
  if (expression !== null) return ok({ expression, unit: 'kt', name: name === 'clean-speed' ? 'clean speed' : said });
  if (detent !== null && !detentNames(sheet).includes(detent)) return err(`${sheet.type} has no detent ${detent}`);
  return err(detent === null ? `${name} needs a detent` : `the sheet of ${sheet.type} gives no ${name} for ${detent}`);
}

/** Speeds that the operator makes of those of the sheet. */
function policySpeed(term: Extract<Term, { kind: 'speed' }>, sheet: Sheet, { speeds }: TermPolicy): Expression | null {
  if (term.name === 'clean-speed') {
    const clean = detentNames(sheet)[0]!;
    const vmm = speedExpression(sheet, { name: 'VMM', detent: clean, icing: term.icing });
    return vmm && add(vmm, number(speeds.cleanSpeedAddition));
  }
  if (term.name !== 'VAPP') return null;
  const vref = speedExpression(sheet, { name: 'VREF', detent: term.detent, icing: term.icing });
  const { least, most, headWindShare } = speeds.approachAddition;
  return vref && add(vref, max(number(least), min(number(most), mul(number(headWindShare), variable('wind')))));
}

function combined(term: Extract<Term, { kind: 'sum' | 'extreme' }>, context: TermContext): Result<TermValue, string> {
  const terms = term.kind === 'sum' ? [term.left, term.right] : term.of;
  const values: TermValue[] = [];
  for (const part of terms) {
    const value = termExpression(part, context);
    if (!value.ok) return value;
    values.push(value.value);
  }
  const [first, ...rest] = values;
  if (first === undefined) return err('nothing is compared');
  const stranger = rest.find((value) => value.unit !== first.unit);
  if (stranger !== undefined) return err(`${first.name} is in ${first.unit} and ${stranger.name} in ${stranger.unit}`);
  const deed = term.kind === 'extreme' ? (term.which === 'max' ? max : min) : term.sign === '+' ? add : sub;
  const names = values.map((value) => value.name);
  const name = term.kind === 'sum' ? names.join(` ${term.sign} `) : `${term.which}(${names.join(', ')})`;
  return ok({ expression: values.map((value) => value.expression).reduce(deed), unit: first.unit, name });
}

/** A gate as a condition to be proven, or the reason why numbers alone can't answer it. */
export function gateCondition(gate: Gate, context: TermContext): Result<Condition, string> {
  switch (gate.kind) {
    case 'compare':
      return compared(gate.left, gate.op, gate.right, context);
    case 'window': {
      const low = compared(gate.what, '>=', gate.low, context);
      if (!low.ok) return low;
      const high = compared(gate.what, '<=', gate.high, context);
      return high.ok ? ok({ kind: 'all', of: [low.value, high.value] }) : high;
    }
    case 'not': {
      const of = gateCondition(gate.of, context);
      return of.ok ? ok({ kind: 'not', of: of.value }) : of;
    }
    case 'all':
    case 'any': {
      const of: Condition[] = [];
      for (const part of gate.of) {
        const condition = gateCondition(part, context);
        if (!condition.ok) return condition;
        of.push(condition.value);
      }
      return ok({ kind: gate.kind, of });
    }
    default:
      return err('this is seen or heard, not measured');
  }
}

function compared(
  left: Term,
  op: '<' | '<=' | '=' | '>=' | '>',
  right: Term,
  context: TermContext,
): Result<Condition, string> {
  const a = termExpression(left, context);
  if (!a.ok) return a;
  const b = termExpression(right, context);
  if (!b.ok) return b;
  if (a.value.unit !== b.value.unit)
    return err(`${a.value.name} is in ${a.value.unit} and ${b.value.name} in ${b.value.unit}`);
  return ok({
    kind: 'compare',
    left: a.value.expression,
    op,
    right: b.value.expression,
    leftName: a.value.name,
    rightName: b.value.name,
    unit: a.value.unit,
  });
}
