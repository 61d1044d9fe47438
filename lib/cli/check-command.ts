// `cuewright check`: every file by itself, so that one that can't be read does not hide what is found in the others.
import { weigh } from '../check/answer.ts';
import { checkProcedure } from '../check/check.ts';
import { corpusOf } from '../check/corpus.ts';
import { type Told, toldBy } from '../check/told.ts';
import { type PlacedProcedure, readPlacedProcedure } from '../file/procedure-file.ts';
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

  const read: Read[] = [];
  for (const file of files) {
    const text = await readText(file);
    const procedure = text.ok ? readPlacedProcedure(text.value, nameOf(file)) : text;
    if (procedure.ok) read.push({ file, ...procedure.value });
    else unreadable.push({ file, problems: procedure.error });
  }

  const all = toldTogether(read, grounds.value);
  const procedures: ProcedureReport[] = [];
  const shown = progress(read.length, process.stderr, () => performance.now());
  for (const [done, one] of read.entries()) {
    procedures.push(checkOne(one, grounds.value, all));
    shown.at(done + 1);
  }
  shown.end();
  return reportOf(grounds.value, procedures, unreadable, command.strict);
}

type Read = PlacedProcedure & { readonly file: string };

/** All that were named together are each other's others; those of the library join them unless they were named. */
function toldTogether(read: readonly Read[], { library }: Grounds): readonly Told[] {
  const given = new Map(read.map(({ procedure }) => [procedure.id, procedure]));
  const more = (library?.procedures ?? []).filter((each) => !given.has(each.id));
  return [...given.values(), ...more].map(toldBy);
}

function checkOne({ file, procedure, answers, where }: Read, grounds: Grounds, all: readonly Told[]): ProcedureReport {
  const { sheets, policy, library } = grounds;
  const { chosen, remarks } = chooseSheet(procedure, sheets);
  const others = all.filter((each) => each.head.id !== procedure.id);
  const facts = {
    sheet: chosen?.sheet ?? null,
    policy: policy.policy,
    library: library?.library ?? null,
    fleet: library?.fleet ?? null,
    // Where there is no other procedure, none was given: what it would say of this one is not known.
    others: others.length === 0 ? null : others,
  };
  const found = checkProcedure(procedure, facts, undefined, corpusOf(all));
  const sheet = chosen && { file: chosen.file, type: chosen.sheet.type, revision: chosen.sheet.revision };
  const answered = weigh(found.findings, answers, today(), policy.policy.signOff.answerMonths);
  return procedureReport(file, procedure, { sheet, remarks }, found, answered, {
    of: (at) => where(pathOf(procedure, at)),
    ofAnswer: (answer) => where(['answers', answers.indexOf(answer)]),
  });
}

/** Answers end by the day, UTC. */
const today = (): string => new Date().toISOString().slice(0, 10);
