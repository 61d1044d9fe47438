/** Do both sides of a comparison speak of the same thing? */
import type { Gate, GateProblem } from './syntax.ts';

export function typeProblems(gate: Gate): readonly GateProblem[] {
  return gate.kind === 'all' ? [] : [];
}
