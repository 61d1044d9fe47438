/** Every gate and term inside a gate, in the order of the text. */
import type { Gate, Term } from './syntax.ts';

export type Visitor = {
  readonly gate?: (gate: Gate) => void;
  readonly term?: (term: Term) => void;
};

export function visitGate(gate: Gate, visitor: Visitor): void {
  visitor.gate?.(gate);
  switch (gate.kind) {
    case 'compare':
      visitTerm(gate.left, visitor);
      visitTerm(gate.right, visitor);
      break;
    case 'window':
      for (const each of [gate.what, gate.low, gate.high]) visitTerm(each, visitor);
      break;
    case 'after':
      if (gate.delay !== null) visitTerm(gate.delay, visitor);
      break;
    case 'within':
      visitGate(gate.of, visitor);
      visitTerm(gate.limit, visitor);
      break;
    case 'not':
      visitGate(gate.of, visitor);
      break;
    case 'all':
    case 'any':
      for (const each of gate.of) visitGate(each, visitor);
      break;
    default:
  }
}

function visitTerm(term: Term, visitor: Visitor): void {
  visitor.term?.(term);
  if (term.kind === 'sum') {
    visitTerm(term.left, visitor);
    visitTerm(term.right, visitor);
  }
  if (term.kind === 'extreme') for (const each of term.of) visitTerm(each, visitor);
}
