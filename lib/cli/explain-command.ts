// `cuewright explain`: the manual page of a check, rendered from the check itself.
import { err, ok, type Result } from '../base/result.ts';
import { checkNamed, findChecks, kindWords, needWords, phaseWords, readWords, sourceWords } from '../check/manual.ts';
import type { Rule } from '../check/rule.ts';
import { rules } from '../check/rules/index.ts';
import { nearest } from '../gate/nearest.ts';
import { EXIT, type Exit } from './exit.ts';

const WIDTH = 100;

export function explain(words: readonly string[]): Exit {
  const said = explained(words);
  (said.ok ? process.stdout : process.stderr).write(said.ok ? said.value : said.error);
  return said.ok ? EXIT.clear : EXIT.unreadable;
}

/** A page where one id or number is given, else the list of all checks that hold every word; else a sentence. */
export function explained(words: readonly string[]): Result<string, string> {
  const [first = ''] = words;
  const named = words.length === 1 ? checkNamed(first) : null;
  if (named !== null) return ok(page(named));
  const found = findChecks({ words: words.join(' ') });
  if (found.length > 0) return ok(`${found.map(line).join('\n')}\n${found.length} of ${rules.length} checks\n`);
  const ids = rules.map((rule) => rule.id);
  const near = nearest(first, ids);
  return err(`No check has ${words.join(' ')} in it.${near === null ? '' : ` Did you mean ${near}?`}\n`);
}

const line = ({ number, severity, id, title }: Rule): string =>
  `${String(number).padStart(4)}  ${severity.padEnd(6)}  ${id.padEnd(32)}  ${title}`;

function page(rule: Rule): string {
  const { id, number, severity, kind, title, says, why, stage, messages, examples } = rule;
  return `${[
    `${title}\n${id} · check ${number} · ${severity}`,
    wrapped(says),
    `Why\n${indented(wrapped(why))}`,
    `Source\n${indented(wrapped(sourceWords(rule)))}`,
    [
      `Asks       ${kindWords(kind)}`,
      `From       ${kind.includes('S') ? 'where the procedure is flown: Fly it, cuewright fly' : stage}`,
      `Phases     ${phaseWords(rule)}`,
      `Needs      ${needWords(rule)}`,
      `Reads      ${readWords(rule)}`,
    ].join('\n'),
    `Says\n${indented(Object.values<string>(messages).map(wrapped).join('\n'))}`,
    `Found in\n${indented(examples.bad)}`,
    `Not found in\n${indented(examples.good)}`,
  ].join('\n\n')}\n`;
}

const indented = (text: string): string => text.trim().replaceAll(/^(?=.)/gm, '  ');

function wrapped(text: string): string {
  const lines: string[] = [];
  let row = '';
  for (const word of text.split(/\s+/)) {
    if (row !== '' && row.length + 1 + word.length > WIDTH) {
      lines.push(row);
      row = word;
    } else row = row === '' ? word : `${row} ${word}`;
  }
  return [...lines, row].join('\n');
}
