import type { GateProblem } from '../gate/syntax.ts';
import type { Fix, Place } from './finding.ts';

/** The correction of a gate problem as the whole new text of its field; nothing where the parser is not certain. */
export function applied(text: string, problem: GateProblem, at: Place): { readonly fix?: Fix } {
  const { fix } = problem;
  if (fix === null) return {};
  return { fix: { says: fix.says, at, value: text.slice(0, fix.span.from) + fix.text + text.slice(fix.span.to) } };
}
