// Nested text to YAML that a person likes to read: short records on one line, long words folded, nothing that is not said.
import { Document, isMap, isScalar, isSeq, Scalar, visit } from 'yaml';
import type { Plain } from './plain-yaml.ts';

/** A record up to this many characters stands on one line. */
const ONE_LINE = 100;

/** Ends with `...`, so that half a file is known as half a file. Keys keep the order of the value. */
export function writePlain(value: Plain): string {
  const document = new Document(value, { schema: 'core' });
  visit(document, (_key, node) => {
    if (isScalar(node) && typeof node.value === 'string' && needsEscapes(node.value)) node.type = Scalar.QUOTE_DOUBLE;
    if (isMap(node) || isSeq(node)) {
      const items = isMap(node) ? node.items.map((pair) => pair.value) : node.items;
      const flat = items.every((item) => isScalar(item) || (isSeq(item) && item.items.every(isScalar)));
      if (flat && lengthOf(node.toJSON()) <= ONE_LINE) node.flow = true;
    }
  });
  return `${document.toString({ lineWidth: 120, minContentWidth: 40, flowCollectionPadding: false })}...\n`;
}

/** Line ends other than \n, and what editors don't show, survive only as escapes. */
const needsEscapes = (text: string): boolean =>
  /[^\n\t\P{C}]|[\u0085\u2028\u2029\uFEFF]/u.test(text) || /^\s|\s$/.test(text);

const lengthOf = (value: unknown): number => JSON.stringify(value).length;
