// `cuewright check`: every file by itself, so that one that can't be read does not hide what is found in the others.
import { checkProcedure } from '../check/check.ts';
import { readPlacedProcedure } from '../file/procedure-file.ts';
import type { CheckCommand } from './arguments.ts';
import { chooseSheet } from './choose-sheet.ts';
import type { Exit } from './exit.ts';
import { type Grounds, readGrounds } from './grounds.ts';
import { filesOf, nameOf, readText, STDIN, type Unreadable } from './input.ts';
import { pathOf } from './place.ts';
import { progress } from './progress.ts';
import { type ProcedureReport, procedureReport, type Report, reportOf } from './report.ts';
import { sarifOf } from './sarif.ts';
import { textOf } from './text.ts';

/** Prints the report to standard output, in the form asked for, and answers how the command ends. */
export async function check(command: CheckCommand): Promise<Exit> {
  const report = await checked(command);
  process.stdout.write(printed(report, command));
  return report.exit;
}

function printed(report: Report, { format }: CheckCommand): string {
  if (format === 'text') return textOf(report);
  return `${JSON.stringify(format === 'json' ? report : sarifOf(report), null, 2)}\n`;
}

async function checked(command: CheckCommand): Promise<Report> {
  const grounds = await readGrounds(command);
  if (!grounds.ok) return reportOf(null, [], grounds.error, command.strict);

  const unreadable: Unreadable[] = [];
  const files: string[] = [];
  for (const named of command.files) {
    const found = await filesOf(named);
    if (found.ok) files.push(...found.value);
    else unreadable.push(found.error);
  }
  if (files.includes(STDIN) && process.stdin.isTTY) process.stderr.write('Reading a procedure from standard input.\n');

  const procedures: ProcedureReport[] = [];
  const shown = progress(files.length, process.stderr, () => performance.now());
  for (const [done, file] of files.entries()) {
    const text = await readText(file);
    const one = text.ok ? checkText(file, text.value, grounds.value) : { file, problems: text.error };
    if ('problems' in one) unreadable.push(one);
    else procedures.push(one);
    shown.at(done + 1);
  }
  shown.end();
  return reportOf(grounds.value, procedures, unreadable, command.strict);
}

function checkText(file: string, text: string, grounds: Grounds): ProcedureReport | Unreadable {
  const read = readPlacedProcedure(text, nameOf(file));
  if (!read.ok) return { file, problems: read.error };
  const { procedure, where } = read.value;
  const { chosen, remarks } = chooseSheet(procedure, grounds.sheets);
  const facts = {
    sheet: chosen?.sheet ?? null,
    policy: grounds.policy.policy,
    library: grounds.library?.library ?? null,
  };
  const found = checkProcedure(procedure, facts);
  const sheet = chosen && { file: chosen.file, type: chosen.sheet.type, revision: chosen.sheet.revision };
  return procedureReport(file, procedure, { sheet, remarks }, found, (at) => where(pathOf(procedure, at)));
}
