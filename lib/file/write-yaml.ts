// Nested text to YAML that a person likes to read: short records on one line, long words folded, nothing that is not said.
import { Document, isMap, isScalar, isSeq, Scalar, visit, YAMLSeq } from 'yaml';
import type { Plain } from './plain-yaml.ts';

const WIDTH = 120;
/** Text that is longer is folded in a block of its own, whatever the depth at which it stands. */
const ONE_LINE = 84;
/** A record or list up to this many characters stands on one line. */
const ONE_RECORD = 92;

/** Ends with `...`, so that half a file is known as half a file. Keys keep the order of the value. */
export function writePlain(value: Plain): string {
  const document = new Document(value, { schema: 'core', aliasDuplicateObjects: false });
  visit(document, {
    // Keys are our own words; what they hold is anybody's.
    Pair: (_key, pair) => shape(pair.value),
    Seq: (_key, list) => list.items.forEach(shape),
  });
  return `${document.toString({ lineWidth: WIDTH, minContentWidth: 40, flowCollectionPadding: true })}...\n`;
}

function shape(node: unknown): void {
  if (isScalar(node) && typeof node.value === 'string') {
    if (needsEscapes(node.value)) node.type = Scalar.QUOTE_DOUBLE;
    else if (node.value.length > ONE_LINE && !node.value.includes('\n')) node.type = Scalar.BLOCK_FOLDED;
  }
  if (isMap(node) || isSeq(node)) {
    const items = isMap(node) ? node.items.map((pair) => pair.value) : node.items;
    const flat = items.every((item) => isScalar(item) || (isSeq(item) && item.items.every(isScalar)));
    if (flat && JSON.stringify(node.toJSON()).length <= ONE_RECORD) node.flow = true;
    if (isSeq(node) && node.flow) node.toString = tight;
  }
}

/** Records have a blank inside their braces, lists have none: the one thing that the printer has no switch for. */
const tight: YAMLSeq['toString'] = function (this: YAMLSeq, context, ...rest) {
  return YAMLSeq.prototype.toString.call(this, context && { ...context, flowCollectionPadding: '' }, ...rest);
};

/** Line ends other than \n, and what editors don't show, survive only as escapes. */
const needsEscapes = (text: string): boolean =>
  /[^\n\t\P{C}]|[\u0085\u2028\u2029\uFEFF]/u.test(text) || /^\s|\s$|[^\S\n]\n|\n[^\S\n]|\t|\s{2}/.test(text);
