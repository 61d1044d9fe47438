import { isNode, LineCounter, parseDocument } from 'yaml';
import { err, ok, type Result } from '../base/result.ts';
import type { FileProblem } from '../file/problem.ts';
import { type Policy, readPolicy } from '../policy/policy.ts';
import { wholeFile } from './input.ts';

/** More than any policy has, characters. */
const LONGEST = 200_000;

/** A policy from the text of a YAML or JSON file, with the place of everything that is wrong. */
export function readPolicyText(text: string): Result<Policy, readonly FileProblem[]> {
  if (text.length > LONGEST) return err([wholeFile(`A policy has at most ${LONGEST / 1_000} 000 characters.`)]);
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false });
  const at = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  const broken = document.errors[0];
  if (broken !== undefined) {
    return err([{ ...wholeFile(`Not YAML or JSON: ${broken.message}.`), ...at(broken.pos[0]) }]);
  }
  let data: unknown;
  try {
    data = document.toJS({ maxAliasCount: 100 });
  } catch {
    return err([wholeFile('The file repeats itself by aliases more often than a policy needs.')]);
  }
  const read = readPolicy(data);
  if (read.ok) return ok(read.value);
  return err(
    read.error.map((problem) => {
      const path = problem.at === '' ? [] : problem.at.split('.');
      return { ...wholeFile(`${problem.message}.`), ...at(offsetOf(document, path)), path: problem.at };
    }),
  );
}

/** Where the value begins, or the nearest thing around it that is there. */
function offsetOf(document: ReturnType<typeof parseDocument>, path: readonly string[]): number {
  for (let length = path.length; length > 0; length -= 1) {
    const keys = path.slice(0, length).map((key) => (/^\d+$/.test(key) ? Number(key) : key));
    const node = document.getIn(keys, true);
    if (isNode(node) && node.range) return node.range[0];
  }
  return 0;
}
