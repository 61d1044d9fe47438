import { add, type Expression, evaluate, number, table1, variable } from '../base/expression.ts';
import type { SpeedName } from '../gate/syntax.ts';
import { parseFormula } from './formula.ts';
import { detentNamed } from './limits.ts';
import type { Detent, Sheet, SpeedRule } from './sheet.ts';
import type { ValueRule } from './value.ts';

/** `wet` matters to V1 alone. */
export type SpeedReference = {
  readonly name: SpeedName;
  readonly detent: string | null;
  readonly icing: boolean;
  readonly wet?: boolean;
};

/** Standard gravity, m/s²; sea-level density, kg/m³; metres per second in a knot (ISO 2533, from memory; 1 NM = 1 852 m). */
const UNIVERSAL: Readonly<Record<string, number>> = { g0: 9.80665, rho0: 1.225, knot: 1852 / 3600 };

/** Names that a formula may use beside the variables and the other speeds of its detent. */
export function constantsOf(sheet: Sheet, detent: Detent | null): Readonly<Record<string, number>> {
  const own = Object.fromEntries(Object.entries(sheet.constants).map(([name, constant]) => [name, constant.value]));
  return {
    ...UNIVERSAL,
    wingArea: sheet.drag.wingArea.value,
    maximumTakeOff: sheet.weights.maximumTakeOff.value,
    maximumLanding: sheet.weights.maximumLanding.value,
    minimumFlight: sheet.weights.minimumFlight.value,
    VMCA: sheet.limits.vmca.value,
    VMCG: sheet.limits.vmcg.value,
    v1Floor: sheet.limits.v1Floor.value,
    VMO: sheet.limits.vmo.value,
    ...(detent?.clMax ? { clMax: detent.clMax.value } : {}),
    ...own,
  };
}

const cache = new WeakMap<Sheet, Map<string, Expression | null>>();

/**
 * The speed in kt as a formula of `weight` (kg), from the schedule or the limits of the sheet. null when the sheet has no
 * such speed, when it needs more than the sheet knows (VAPP, clean-speed: policy), or when it is a Mach number (MMO, MLE).
 * V1, VR, V2 and VREF serve checks; a crew takes them from its approved calculation.
 */
export function speedExpression(sheet: Sheet, ref: SpeedReference): Expression | null {
  const key = `${ref.name} ${ref.detent} ${ref.icing} ${ref.wet ?? false}`;
  let known = cache.get(sheet);
  if (!known) cache.set(sheet, (known = new Map()));
  const before = known.get(key);
  if (before !== undefined) return before;
  const found = limitSpeed(sheet, ref) ?? scheduled(sheet, ref, []);
  known.set(key, found);
  return found;
}

/** The same at one weight (kg), kt. null where the sheet has no such speed, or its table no such weight. */
export function speedAt(sheet: Sheet, ref: SpeedReference, at: { readonly weight: number }): number | null {
  const expression = speedExpression(sheet, ref);
  if (expression === null) return null;
  const value = evaluate(expression, at);
  return Number.isFinite(value) ? value : null;
}

function limitSpeed(sheet: Sheet, ref: SpeedReference): Expression | null {
  const { limits } = sheet;
  switch (ref.name) {
    case 'VFE': {
      const vfe = ref.detent === null ? null : detentNamed(sheet, ref.detent)?.vfe;
      return vfe ? number(vfe.value) : null;
    }
    case 'VLO-extend':
      return number(limits.gear.vloExtend.value);
    case 'VLO-retract':
      return number(limits.gear.vloRetract.value);
    case 'VLE':
      return number(limits.gear.vle.value);
    case 'VMO':
      return number(limits.vmo.value);
    case 'VMCA':
      return number(limits.vmca.value);
    case 'VMCG':
      return number(limits.vmcg.value);
    default:
      return null;
  }
}

/** The entry of the schedule that gives this speed. V1 falls back on the entry without a runway. */
export function scheduleEntry(sheet: Sheet, name: string, detent: string, wet: boolean): SpeedRule | null {
  const fits = sheet.speeds.filter((entry) => entry.name === name && entry.detents.includes(detent));
  const runway = wet ? 'wet' : 'dry';
  return fits.find((entry) => entry.runway === runway) ?? fits.find((entry) => entry.runway === undefined) ?? null;
}

function scheduled(sheet: Sheet, ref: SpeedReference, above: readonly string[]): Expression | null {
  if (ref.detent === null) return null;
  const entry = scheduleEntry(sheet, ref.name, ref.detent, ref.wet ?? false);
  const detent = detentNamed(sheet, ref.detent);
  if (entry === null || detent === null || above.includes(ref.name)) return null;
  const constants = constantsOf(sheet, detent);
  const shared = new Map<string, Expression | null>();
  const base = ruleExpression(entry.rule, (name) => {
    if (shared.has(name)) return shared.get(name)!;
    const found = look(name);
    shared.set(name, found);
    return found;
  });
  function look(name: string): Expression | null {
    if (name === 'weight') return variable('weight');
    const constant = constants[name];
    if (constant !== undefined) return number(constant);
    const path = [...above, ref.name];
    return scheduled(sheet, { ...ref, name: name as SpeedName, icing: false }, path);
  }
  return base && ref.icing && entry.icing ? add(base, number(entry.icing.value)) : base;
}

/** A rule of the sheet as an expression; null when its formula can't be read or speaks of something unknown. */
export function ruleExpression(rule: ValueRule, look: (name: string) => Expression | null): Expression | null {
  switch (rule.kind) {
    case 'constant':
      return number(rule.value);
    case 'table': {
      const of = look(rule.by);
      return of && table1(of, rule.at, rule.gives, rule.by);
    }
    case 'table2': {
      const of = look(rule.by[0]);
      const and = look(rule.by[1]);
      if (!of || !and) return null;
      return { kind: 'table2', of, and, at: rule.at, by: rule.across, gives: rule.gives, name: rule.by.join(' and ') };
    }
    case 'formula': {
      const read = parseFormula(rule.text, look);
      return read.ok ? read.value : null;
    }
  }
}
