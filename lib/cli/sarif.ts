// The report as SARIF 2.1.0, the interchange form that code hosts and editors show beside lines.

import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Severity } from '../check/finding.ts';
import { rules } from '../check/rules/index.ts';
import { STDIN } from './input.ts';
import type { FilePlace } from './place.ts';
import type { ProcedureReport, Report, ReportedAnswer, ReportedFinding } from './report.ts';
import { witnessWords } from './witness-words.ts';

const LEVEL: Readonly<Record<Severity, 'error' | 'warning' | 'note'>> = {
  STOP: 'error',
  ANSWER: 'warning',
  ADVICE: 'note',
};

/** A whole log, ready for JSON. What could not be read, or not be checked, is told as a notification of the run. */
export function sarifOf(report: Report): unknown {
  const { procedures, unreadable } = report;
  const number = new Map(rules.map((rule, index) => [rule.id, index]));
  const rule = (id: string) => ({ id, index: number.get(id) ?? -1 });
  const unread = unreadable.flatMap(({ file, problems }) =>
    problems.map((problem) => ({
      level: 'error',
      message: { text: [problem.message, ...problem.expected.map((word) => `Expected: ${word}.`)].join(' ') },
      locations: [location(file, problem)],
    })),
  );
  const unasked = procedures.flatMap(({ file, notChecked, crashed, openAnswers }) => [
    ...openAnswers.map((answer) => ({
      level: 'note',
      message: { text: `The ${answer.kind} is open again: ${answer.because}. ${answer.reason}` },
      associatedRule: rule(answer.check),
      locations: [location(file, answer)],
    })),
    ...notChecked.map(({ check, because, at }) => ({
      level: 'warning',
      message: { text: `Not checked, because ${because}.` },
      associatedRule: rule(check),
      locations: [location(file, at)],
    })),
    ...crashed.map(({ check, error }) => ({
      level: 'error',
      message: { text: `Not checked, because the check itself failed: ${error}` },
      associatedRule: rule(check),
      locations: [location(file, null)],
    })),
  ]);
  return {
    $schema: 'https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Cuewright', rules: rules.map(descriptor) } },
        columnKind: 'utf16CodeUnits',
        invocations: [
          {
            executionSuccessful: unreadable.length === 0,
            exitCode: report.exit,
            toolExecutionNotifications: [...unread, ...unasked],
          },
        ],
        results: procedures.flatMap(({ file, findings }) => findings.map((finding) => result(file, finding, rule))),
        properties: { against: report.against, checked: procedures.map(coverage), totals: report.totals },
      },
    ],
  };
}

function descriptor({ id, number, severity, kind, title, says, why, source }: (typeof rules)[number]) {
  return {
    id,
    name: title,
    shortDescription: { text: title },
    fullDescription: { text: says },
    help: { text: `${says}\n\n${why}\n\n${source.text}${source.seen ? '' : ' (from memory, to be verified)'}` },
    defaultConfiguration: { level: LEVEL[severity] },
    properties: { number, severity, kind },
  };
}

function result(file: string, finding: ReportedFinding, rule: (id: string) => { id: string; index: number }) {
  const { check, severity, message, witness, cause, fix, read, called, step, field, answer } = finding;
  return {
    ruleId: check,
    ruleIndex: rule(check).index,
    level: LEVEL[severity],
    message: { text: `${message} Witness: ${witnessWords(witness)}` },
    locations: [
      { ...location(file, finding), logicalLocations: [{ name: called, fullyQualifiedName: `${step}/${field}` }] },
    ],
    partialFingerprints: { 'cuewright/1': read },
    ...(answer === null ? {} : { suppressions: [suppression(severity, answer)] }),
    properties: { severity, witness, cause, fix, answer },
  };
}

/** A waiver is a claim until a server that knows people has looked at it. */
const suppression = (severity: Severity, { reason }: ReportedAnswer) => ({
  kind: 'inSource',
  status: severity === 'STOP' ? 'underReview' : 'accepted',
  justification: reason,
});

const coverage = ({ file, id, sheet, checked, remarks }: ProcedureReport) => ({ file, id, sheet, ...checked, remarks });

function location(file: string, at: FilePlace | null) {
  const region = at === null ? {} : { region: { startLine: at.line, startColumn: at.column } };
  return { physicalLocation: { artifactLocation: { uri: uriOf(file) }, ...region } };
}

/** Relative as typed where it is relative, so that a host finds the file in its own checkout. */
function uriOf(file: string): string {
  if (file === STDIN) return 'standard-input';
  if (path.isAbsolute(file)) return pathToFileURL(file).href;
  return path.normalize(file).split(path.sep).map(encodeURIComponent).join('/');
}
