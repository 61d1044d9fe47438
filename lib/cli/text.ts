// The report for a person at a terminal.
import { byCause } from '../check/group.ts';
import { nameOf, type Unreadable } from './input.ts';
import type {
  OpenAnswer,
  ProcedureReport,
  Report,
  ReportedAnswer,
  ReportedFinding,
  ReportedNotChecked,
} from './report.ts';
import { witnessWords } from './witness-words.ts';

const IN = '    ';

/** Ends with a line break. Procedures in the order in which they were named; what can't be read at the end, near the eye. */
export function textOf(report: Report): string {
  const parts = [...report.procedures.map(procedureText), ...report.unreadable.map(unreadableText)];
  return `${[againstText(report), ...parts, totalText(report)].filter((part) => part !== '').join('\n\n')}\n`;
}

function againstText({ against }: Report): string {
  if (against === null) return '';
  const sheets = against.sheets.map(({ file, type, revision }) => `sheet ${type} revision ${revision} (${file})`);
  const { file, operator, version } = against.policy;
  const library = against.library === null ? [] : [libraryText(against.library)];
  const all = [...sheets, `policy ${version} of ${operator} (${file})`, ...library];
  return `checked against ${all.join(', ')}`;
}

function libraryText({ folder, procedures, tails }: NonNullable<NonNullable<Report['against']>['library']>): string {
  const more = [
    ...(procedures === 0 ? [] : [counted(procedures, 'other procedure', 'other procedures')]),
    ...(tails === null ? [] : [counted(tails, 'tail', 'tails')]),
  ];
  return `library ${folder}${more.length === 0 ? '' : ` with ${more.join(' and ')}`}`;
}

function procedureText(procedure: ProcedureReport): string {
  const { checked, notChecked, crashed, remarks } = procedure;
  const reasons = new Map<string, ReportedNotChecked[]>();
  for (const each of notChecked) reasons.set(each.because, [...(reasons.get(each.because) ?? []), each]);
  return [
    `${nameOf(procedure.file)} · ${procedure.title}`,
    ...remarks.map((remark) => `  ${remark}`),
    ...byCause(procedure.findings).flatMap(({ findings }) => groupText(findings)),
    ...procedure.openAnswers.map(openAnswerText),
    `  checked for ${counted(checked.rules.length, 'property', 'properties')} over ${checked.envelope}; those that need a flight are asked by cuewright fly`,
    ...[...reasons].map(([because, all]) => `  not checked, because ${because}: ${all.map(whichText).join(', ')}`),
    ...crashed.map(({ check, error }) => `  not checked, because the check itself failed: ${check} (${error})`),
  ].join('\n');
}

/** One cause is told once; where else it shows follows. */
function groupText(group: readonly ReportedFinding[]): string[] {
  const [first, ...others] = group;
  if (first === undefined) return [];
  const { severity, line, column, called, check, message, witness, fix } = first;
  const standing = group.flatMap(({ answer }) => answer ?? []);
  const told = new Set(standing.map((answer) => answerText(answer)));
  return [
    `  ${severity} · ${line}:${column} · ${called} · ${check}`,
    `${IN}${message}`,
    `${IN}${witnessWords(witness)}`,
    ...(fix === null ? [] : [`${IN}certain correction: ${fix.says}`]),
    ...[...told].map((answer) => `${IN}${answer}`),
    ...others.map(
      (other) => `${IN}the same cause · ${other.line}:${other.column} · ${other.called} · ${other.message}`,
    ),
  ];
}

function answerText({ kind, reason, by, on, until }: ReportedAnswer): string {
  const end = until === null ? '' : ` until ${until}`;
  if (kind === 'answer') return `answered by ${by} on ${on}${end}: ${reason}`;
  return `waived, the file claims, by ${by} on ${on}${end}; who that is can not be verified here: ${reason}`;
}

const openAnswerText = ({ kind, check, line, column, called, because, reason }: OpenAnswer): string =>
  `  ${kind} open again · ${line}:${column} · ${called} · ${check}: ${because} (${reason})`;

const whichText = ({ check, at }: ReportedNotChecked): string =>
  at === null ? check : `${check} at ${at.called} (${at.line}:${at.column})`;

export function unreadableText({ file, problems }: Unreadable): string {
  const lines = problems.map(({ line, column, message, expected, fix }) => {
    const wanted = expected.length === 0 ? '' : ` Expected: ${expected.join(', ')}.`;
    return `${nameOf(file)}:${line}:${column} can't be read: ${message}${wanted}${fix === undefined ? '' : ` ${fix}`}`;
  });
  return lines.join('\n');
}

function totalText({ totals, against }: Report): string {
  const { procedures, unreadable, STOP, ANSWER, ADVICE, answered, waived, openAnswers, notChecked, crashed } = totals;
  if (against === null) return 'Nothing was checked: what the procedures are checked against can not be read.';
  const rest = [
    answered > 0 ? `${answered} answered` : '',
    waived > 0 ? `${waived} with a waiver in the file` : '',
    openAnswers > 0 ? `${counted(openAnswers, 'answer', 'answers')} open again` : '',
    notChecked > 0 ? `${notChecked} not checked` : '',
    crashed > 0 ? `${counted(crashed, 'check', 'checks')} failed` : '',
    unreadable > 0 ? `${counted(unreadable, 'file', 'files')} could not be read` : '',
  ];
  const found = [`${STOP} STOP`, `${ANSWER} ANSWER`, `${ADVICE} ADVICE`, ...rest.filter((part) => part !== '')];
  return `${counted(procedures, 'procedure', 'procedures')}: ${found.join(', ')}`;
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
