// YAML and JSON, kept plain: text in, nested text out, with the place of every value. Every scalar stays the text that was
// written ("on", "12", "1e3"), so nothing is turned into a number or a truth value behind the writer's back.
import {
  CST,
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  LineCounter,
  type Node,
  parseDocument,
} from 'yaml';
import { err, ok, type Result } from '../base/result.ts';
import { type FileProblem, PROBLEMS_SHOWN, pathText } from './problem.ts';

export type Plain = string | null | readonly Plain[] | { readonly [key: string]: Plain };
type Path = readonly (string | number)[];

export type PlainFile = {
  readonly value: Plain;
  /** Where the value of a path begins; the nearest parent that exists, where the path does not. */
  readonly where: (path: Path) => { readonly line: number; readonly column: number };
};

/** 300 full steps are about a quarter of this. Larger files are not looked into: they are something else. */
export const LARGEST_FILE = 2_000_000;

/** Records and lists within one another on one line or in brackets. Ours need six; a reader that recurses fails at thousands. */
export const DEEPEST = 60;

export type PlainOptions = {
  /** The last line must be `...`, so that half a file is known as half a file. JSON closes its brackets instead. */
  readonly endMark: boolean;
};

/** Aliases, anchors, tags and repeated keys are refused: a file says what it says, once. */
export function readPlain(text: string, name: string, options: PlainOptions): Result<PlainFile, FileProblem[]> {
  const refusal = refuseWhole(text, name);
  if (refusal !== null) return err([{ line: 1, column: 1, path: '', expected: [], ...refusal }]);
  if (tooDeep(text)) {
    const message = `${name} is nested more than ${DEEPEST} deep.`;
    return err([{ line: 1, column: 1, path: '', message, expected: [] }]);
  }
  const lines = new LineCounter();
  const document: Document.Parsed = parseDocument(text.replace(/^\uFEFF/, ''), {
    schema: 'failsafe',
    lineCounter: lines,
    prettyErrors: false,
    uniqueKeys: false,
  });
  const place = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  if (document.errors.length > 0) {
    const found = document.errors.slice(0, PROBLEMS_SHOWN);
    return err(
      found.map((e) => ({ ...place(e.pos[0]), path: '', message: syntaxMessage(e.code, e.message), expected: [] })),
    );
  }
  const { value, offsets, problems } = unfold(document.contents, place);
  if (problems.length > 0) return err(problems.slice(0, PROBLEMS_SHOWN));
  if (options.endMark && !isFlow(document.contents) && !/\n\.\.\.\s*$/.test(text)) {
    const last = place(text.length);
    return err([
      {
        ...last,
        path: '',
        message: `${name} has no end mark: it may be half a file.`,
        expected: ['...'],
        fix: 'If the file is whole, write ... as its last line.',
      },
    ]);
  }
  const where = (path: Path) => {
    for (let n = path.length; n >= 0; n -= 1) {
      const offset = offsets.get(pathText(path.slice(0, n)));
      if (offset !== undefined) return place(offset);
    }
    return { line: 1, column: 1 };
  };
  return ok({ value, where });
}

function refuseWhole(text: string, name: string): Pick<FileProblem, 'message' | 'fix'> | null {
  if (text.length > LARGEST_FILE) {
    const size = (text.length / 1_000_000).toFixed(1);
    return {
      message: `${name} holds ${size} million characters; at most ${LARGEST_FILE / 1_000_000} million are read.`,
    };
  }
  if (text.trim() === '' || text === '\uFEFF') return { message: `${name} is empty.` };
  // NUL and repeated U+FFFD are what bytes that are not text turn into.
  if (text.includes('\u0000') || /\uFFFD{2}/.test(text)) {
    return { message: `${name} is not text.`, fix: 'Save it as UTF-8 text, YAML or JSON.' };
  }
  return null;
}

/** Looked at before the text is composed, because composing recurses. Nesting by indentation grows with the square of its
 *  depth, so the size of the file bounds it. */
function tooDeep(text: string): boolean {
  let brackets = 0;
  let marks = 0;
  for (const token of new Lexer().lex(text)) {
    const type = CST.tokenType(token);
    if (type === 'flow-seq-start' || type === 'flow-map-start') brackets += 1;
    else if (type === 'flow-seq-end' || type === 'flow-map-end') brackets -= 1;
    else if (type === 'seq-item-ind' || type === 'explicit-key-ind' || type === 'map-value-ind') marks += 1;
    else if (type === 'newline') marks = 0;
    if (brackets > DEEPEST || (brackets === 0 && marks > DEEPEST)) return true;
  }
  return false;
}

function syntaxMessage(code: string, message: string): string {
  const first = message.split('\n')[0]!.replace(/\.$/, '');
  if (code === 'TAB_AS_INDENT') return 'Indented with a tab; YAML wants spaces.';
  if (code === 'MULTIPLE_DOCS') return 'A second document begins here; a file holds one.';
  if (first.includes('call stack')) return 'Nested too deep to be read.';
  return `Not YAML or JSON: ${first.length > 120 ? `${first.slice(0, 120)}…` : first}.`;
}

const isFlow = (node: Node | null): boolean => isMap(node) && node.flow === true;

type Unfolded = { value: Plain; offsets: Map<string, number>; problems: FileProblem[] };

function unfold(root: Node | null, place: (offset: number) => { line: number; column: number }): Unfolded {
  const offsets = new Map<string, number>();
  const problems: FileProblem[] = [];
  const refuse = (at: number, path: Path, message: string, fix?: string) =>
    problems.push({ ...place(at), path: pathText(path), message, expected: [], ...(fix === undefined ? {} : { fix }) });

  const visit = (node: unknown, path: Path): Plain => {
    const at = startOf(node);
    if (at !== null) offsets.set(pathText(path), at);
    if (isAlias(node)) {
      refuse(at ?? 0, path, `*${node.source} points elsewhere in the file.`, 'Write the words out.');
      return null;
    }
    if (isScalar(node) || isMap(node) || isSeq(node)) {
      if (node.anchor !== undefined)
        refuse(at ?? 0, path, `&${node.anchor} marks a place to point to.`, 'Leave it out.');
      if (node.tag !== undefined && !/^tag:yaml\.org,2002:(str|map|seq)$/.test(node.tag)) {
        refuse(at ?? 0, path, `The tag ${node.tag} has no meaning here.`, 'Leave it out.');
      }
    }
    if (isSeq(node)) return node.items.map((item, i) => visit(item, [...path, i]));
    if (isMap(node)) {
      const entries = new Map<string, Plain>();
      for (const pair of node.items) {
        const keyAt = startOf(pair.key) ?? at ?? 0;
        if (!isScalar(pair.key) || typeof pair.key.value !== 'string') {
          refuse(keyAt, path, 'A name of a field is one plain word.');
          continue;
        }
        const key = pair.key.value;
        if (key === '__proto__') refuse(keyAt, path, `There is no field ${key}.`);
        else if (entries.has(key)) refuse(keyAt, [...path, key], `${key} stands here twice.`, 'Keep one of them.');
        else entries.set(key, visit(pair.value, [...path, key]));
        if (startOf(pair.value) === null) offsets.set(pathText([...path, key]), keyAt);
      }
      return Object.fromEntries(entries);
    }
    if (isScalar(node)) return isNothing(node) ? null : String(node.value);
    return null;
  };
  return { value: visit(root, []), offsets, problems };
}

const isNothing = (node: { value: unknown; type?: unknown }): boolean =>
  node.type === 'PLAIN' && (node.value === 'null' || node.value === '~' || node.value === '' || node.value === null);

function startOf(node: unknown): number | null {
  const range = (node as { range?: readonly number[] | null } | null)?.range;
  return range?.[0] ?? null;
}
