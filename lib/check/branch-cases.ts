// The cases of a decision on one measured quantity, as stretches of its scale.
import type { Comparison, Gate, GateUnit, Term } from '../gate/syntax.ts';

type Amount = Extract<Term, { kind: 'amount' }>;
export type Case = {
  readonly scale: string;
  readonly low: number;
  readonly high: number;
  readonly lowIn: boolean;
  readonly highIn: boolean;
};

/** In the larger unit of each kind, so that `60 t` and `60 000 kg` meet. Exact factors. */
const FACTOR: Partial<Record<GateUnit, readonly [string, number]>> = {
  t: ['kg', 1_000],
  min: ['s', 60],
  km: ['m', 1_000],
};

function scaled(amount: Amount): readonly [string, number] {
  const [unit, factor] = FACTOR[amount.unit] ?? [amount.unit, 1];
  return [`${unit} ${amount.reference ?? ''}`, amount.value * factor];
}

function stretch(op: Comparison, value: number): Omit<Case, 'scale'> {
  const whole = { low: -Infinity, high: Infinity, lowIn: false, highIn: false };
  if (op === '=') return { low: value, high: value, lowIn: true, highIn: true };
  if (op === '<' || op === '<=') return { ...whole, high: value, highIn: op === '<=' };
  return { ...whole, low: value, lowIn: op === '>=' };
}

/** null: not a case of one measure against an amount. */
export function caseOf(gate: Gate | null): Case | null {
  if (gate?.kind === 'compare' && gate.left.kind === 'measure' && gate.right.kind === 'amount') {
    const [unit, value] = scaled(gate.right);
    return { scale: `${gate.left.measure} ${gate.left.of ?? ''} ${unit}`, ...stretch(gate.op, value) };
  }
  if (
    gate?.kind === 'window' &&
    gate.what.kind === 'measure' &&
    gate.low.kind === 'amount' &&
    gate.high.kind === 'amount'
  ) {
    const [unit, low] = scaled(gate.low);
    const [, high] = scaled(gate.high);
    return { scale: `${gate.what.measure} ${gate.what.of ?? ''} ${unit}`, low, high, lowIn: true, highIn: true };
  }
  return null;
}

export type Fault = { readonly kind: 'gap' | 'overlap'; readonly from: number; readonly to: number };

/** Where no case holds, and where two do, from the low end of the scale to the high. */
export function faultsOf(cases: readonly Case[]): readonly Fault[] {
  const sorted = [...cases].sort((a, b) => a.low - b.low || Number(b.lowIn) - Number(a.lowIn));
  const faults: Fault[] = [];
  let high = -Infinity;
  let highIn = true;
  for (const next of sorted) {
    const touches = next.low === high && (next.lowIn || highIn);
    const twice = next.low < high || (next.low === high && next.lowIn && highIn && high !== -Infinity);
    if (twice) faults.push({ kind: 'overlap', from: next.low, to: Math.min(high, next.high) });
    else if (!touches && next.low !== -Infinity) faults.push({ kind: 'gap', from: high, to: next.low });
    if (next.high > high || (next.high === high && next.highIn)) {
      high = next.high;
      highIn = next.highIn;
    }
  }
  if (high !== Infinity) faults.push({ kind: 'gap', from: high, to: Infinity });
  return faults;
}
