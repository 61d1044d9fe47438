// Speeds compared over the whole envelope. Every question goes to the prover; nothing here, and no rule, tries weights one
// by one: the worst of an approach may lie at 58 t while both ends are right.
import type { Sheet } from '../aircraft/sheet.ts';
import type { Expression } from '../base/expression.ts';
import { err, ok, type Result } from '../base/result.ts';
import { type Domain, domainOf } from '../envelope/domain.ts';
import { figureOf, where } from '../envelope/explain.ts';
import { termExpression } from '../envelope/gate-terms.ts';
import { prove } from '../envelope/prove.ts';
import type { Comparison, Term } from '../gate/syntax.ts';
import type { Policy } from '../policy/policy.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Witness } from './finding.ts';

/** A speed as a formula, with the name it has in a sentence. kt. */
export type Speed = { readonly name: string; readonly expression: Expression };

export type Verdict =
  | { readonly kind: 'holds' }
  /** `by`: kt at the worst point. `where`: "above 61.1 t", "at every weight". */
  | { readonly kind: 'fails'; readonly by: number; readonly where: string; readonly witness: Witness }
  | { readonly kind: 'undecided'; readonly because: string };

export const envelopeOf = (procedure: Procedure, sheet: Sheet): Domain => domainOf(sheet, procedure.envelope);

/** Entered speeds belong to the detent of the flight: where the text names none, `detent` is meant. */
function ofDetent(term: Term, detent: string): Term {
  if (term.kind === 'sum') return { ...term, left: ofDetent(term.left, detent), right: ofDetent(term.right, detent) };
  if (term.kind === 'extreme') return { ...term, of: term.of.map((part) => ofDetent(part, detent)) };
  return term.kind === 'speed' && term.detent === null ? { ...term, detent } : term;
}

/** The term as a speed in kt with this detent, or the reason why it has no value. */
export function speedOf(term: Term, detent: string, sheet: Sheet, policy: Policy): Result<Speed, string> {
  const value = termExpression(ofDetent(term, detent), { sheet, policy });
  if (!value.ok) return value;
  if (value.value.unit !== 'kt') return err(`${value.value.name} is no speed in kt`);
  return ok({ name: value.value.name, expression: value.value.expression });
}

const WORDS: Readonly<Record<Comparison, string>> = {
  '<': 'is not below',
  '<=': 'is above',
  '=': 'differs from',
  '>=': 'is below',
  '>': 'is not above',
};
const knots = (by: number): string => (by >= 10 ? `${Math.round(by)} kt` : figureOf(by, 'kt'));

/** Whether `left op right` holds everywhere; where not, the worst point with its sentence. */
export function compareOver(left: Speed, op: Comparison, right: Speed, domain: Domain): Verdict {
  const proof = prove({ kind: 'compare', left: left.expression, op, right: right.expression }, domain);
  if (proof.verdict === 'holds') return { kind: 'holds' };
  if (proof.verdict === 'undecided') return { kind: 'undecided', because: proof.because };
  const by = Math.abs(proof.worst);
  const place = where(proof.from) || 'at every weight';
  const name = `${left.name} ${WORDS[op]} ${right.name} ${place}`;
  const at = Object.fromEntries(domain.map((axis) => [axis.name, proof.witness[axis.name] ?? axis.to]));
  const { weight } = proof.witness;
  const says = `${name}${weight === undefined ? ',' : `; at ${figureOf(weight, 'kg')}`} by ${knots(by)}`;
  return { kind: 'fails', by, where: place, witness: { kind: 'envelope', at, says } };
}
