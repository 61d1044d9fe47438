import { type Document, isMap, isSeq, LineCounter, parseDocument } from 'yaml';
import { err, type Result } from '../base/result.ts';
import { readSheet, type Sheet, type SheetProblem } from './sheet.ts';

/** More text than any sheet has; a larger file is refused before it is read. Characters. */
export const LONGEST_SHEET = 2_000_000;
/** A wrong file has thousands of problems; the first ones say it. */
const MOST_PROBLEMS = 50;

/** A problem with its line in the file, counted from 1; null where it belongs to no line. */
export type TextProblem = SheetProblem & { readonly line: number | null };

/** Reads a sheet from the text of a YAML or JSON file. Never throws on what a person wrote. */
export function readSheetText(text: string): Result<Sheet, readonly TextProblem[]> {
  if (text.length > LONGEST_SHEET) {
    const size = (text.length / 1_000_000).toFixed(1);
    return err([
      {
        at: '',
        line: null,
        message: `the file has ${size} million characters; a sheet has at most ${LONGEST_SHEET / 1_000_000}`,
      },
    ]);
  }
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, strict: true, uniqueKeys: true });
  const broken = document.errors[0];
  if (broken !== undefined) {
    const message = `this is no YAML: ${broken.message.split('\n')[0]!.replace(/ at line \d+.*$/, '')}`;
    return err([{ at: '', line: lines.linePos(broken.pos[0]).line, message }]);
  }
  const data = plainly(document);
  if (!data.ok) return err([{ at: '', line: null, message: data.error }]);
  const sheet = readSheet(data.value);
  if (sheet.ok) return sheet;
  return err(
    sheet.error.slice(0, MOST_PROBLEMS).map((problem) => ({ ...problem, line: lineOf(document, lines, problem.at) })),
  );
}

function plainly(document: Document): Result<unknown, string> {
  try {
    return { ok: true, value: document.toJS({ maxAliasCount: 100 }) };
  } catch {
    return err('the file repeats itself by aliases more often than a sheet needs');
  }
}

/** The line of a place such as `detents.2.vfe`, or of the nearest thing around it that is there. */
function lineOf(document: Document, lines: LineCounter, at: string): number | null {
  if (at === '') return 1;
  let node: unknown = document.contents;
  let line: number | null = null;
  for (const key of at.split('.')) {
    if (isMap(node)) {
      const pair = node.items.find((item) => String(item.key) === key);
      if (!pair) return line;
      const start = (pair.key as { range?: readonly number[] | null }).range?.[0];
      if (start !== undefined) line = lines.linePos(start).line;
      node = pair.value;
    } else if (isSeq(node)) {
      node = node.items[Number(key)];
      const start = (node as { range?: readonly number[] | null } | undefined)?.range?.[0];
      if (start !== undefined) line = lines.linePos(start).line;
    } else return line;
  }
  return line;
}
