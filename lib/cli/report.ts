// What `check --format json` prints, and what the other two forms are made from. format.md documents it: fields may be
// added to it, none is taken away or changes its meaning while the form is called cuewright-check/1.

import type { Answered, Reopened } from '../check/answer.ts';
import type { Checked } from '../check/check.ts';
import type { Finding, Fix, Severity, Witness } from '../check/finding.ts';
import { positionWords } from '../procedure/locate.ts';
import type { Procedure } from '../procedure/procedure.ts';
import { type Exit, exitOf } from './exit.ts';
import type { Grounds } from './grounds.ts';
import type { Unreadable } from './input.ts';
import type { FilePlace } from './place.ts';

type Spot = FilePlace & {
  /** Permanent id; '' for the procedure itself. */
  readonly step: string;
  /** As pilots call it: the label, else the position. */
  readonly called: string;
  readonly field: string;
};

export type ReportedFinding = Spot & {
  readonly check: string;
  readonly number: number;
  readonly severity: Severity;
  readonly message: string;
  readonly witness: Witness;
  readonly cause: string;
  readonly fix: Fix | null;
  readonly read: string;
  /** What the file says against it and still holds. A waiver is a claim: who made it can't be verified here. */
  readonly answer: ReportedAnswer | null;
};
export type ReportedAnswer = {
  readonly kind: 'answer' | 'waiver';
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  readonly until: string | null;
};
/** An answer of the file that does not stand, and why. */
export type OpenAnswer = Spot & ReportedAnswer & { readonly check: string; readonly because: Reopened['because'] };
export type ReportedNotChecked = {
  readonly check: string;
  readonly number: number;
  readonly because: string;
  /** null: it was not asked at all. */
  readonly at: Spot | null;
};

export type ProcedureReport = {
  readonly file: string;
  readonly id: string;
  readonly title: string;
  /** null: no sheet fits the procedure's type; `remarks` says why. */
  readonly sheet: { readonly file: string; readonly type: string; readonly revision: string } | null;
  readonly checked: Checked['checked'];
  readonly findings: readonly ReportedFinding[];
  readonly notChecked: readonly ReportedNotChecked[];
  readonly openAnswers: readonly OpenAnswer[];
  readonly crashed: readonly { readonly check: string; readonly number: number; readonly error: string }[];
  readonly remarks: readonly string[];
};

export type Report = {
  readonly form: 'cuewright-check/1';
  readonly exit: Exit;
  readonly totals: Readonly<
    Record<
      | 'procedures'
      | 'unreadable'
      | 'STOP'
      | 'ANSWER'
      | 'ADVICE'
      | 'answered'
      | 'waived'
      | 'openAnswers'
      | 'notChecked'
      | 'crashed',
      number
    >
  >;
  /** null where one of them can't be read: then nothing was checked. */
  readonly against: {
    readonly sheets: readonly { readonly file: string; readonly type: string; readonly revision: string }[];
    readonly policy: { readonly file: string; readonly operator: string; readonly version: string };
    readonly library: {
      readonly folder: string;
      readonly procedures: number;
      readonly tails: number | null;
    } | null;
  } | null;
  readonly procedures: readonly ProcedureReport[];
  readonly unreadable: readonly Unreadable[];
};

export function reportOf(
  grounds: Grounds | null,
  procedures: readonly ProcedureReport[],
  unreadable: readonly Unreadable[],
  strict: boolean,
): Report {
  const findings = procedures.flatMap((procedure) => procedure.findings);
  const count = (severity: Severity): number => findings.filter((finding) => finding.severity === severity).length;
  const crashed = procedures.reduce((sum, procedure) => sum + procedure.crashed.length, 0);
  const notChecked = procedures.reduce((sum, procedure) => sum + procedure.notChecked.length, 0);
  const stops = count('STOP');
  return {
    form: 'cuewright-check/1',
    exit: exitOf({ unreadable: unreadable.length, stops, notChecked: notChecked + crashed, strict }),
    totals: {
      procedures: procedures.length,
      unreadable: unreadable.length,
      STOP: stops,
      ANSWER: count('ANSWER'),
      ADVICE: count('ADVICE'),
      answered: findings.filter(({ answer, severity }) => answer !== null && severity !== 'STOP').length,
      waived: findings.filter(({ answer, severity }) => answer !== null && severity === 'STOP').length,
      openAnswers: procedures.reduce((sum, procedure) => sum + procedure.openAnswers.length, 0),
      notChecked,
      crashed,
    },
    against: grounds && {
      sheets: grounds.sheets.map(({ file, sheet }) => ({ file, type: sheet.type, revision: sheet.revision })),
      policy: {
        file: grounds.policy.file,
        operator: grounds.policy.policy.operator,
        version: grounds.policy.policy.version,
      },
      library: grounds.library && {
        folder: grounds.library.folder,
        procedures: grounds.library.procedures.length,
        tails: grounds.library.fleet?.tails.length ?? null,
      },
    },
    procedures,
    unreadable,
  };
}

/** One procedure with all that was found in it. */
export function procedureReport(
  file: string,
  procedure: Procedure,
  chosen: Pick<ProcedureReport, 'sheet' | 'remarks'>,
  checked: Checked,
  answered: Answered,
  places: {
    readonly of: (at: Finding['at']) => FilePlace;
    readonly ofAnswer: (answer: Reopened['answer']) => FilePlace;
  },
): ProcedureReport {
  const spot = (at: Finding['at']): Spot => ({
    ...places.of(at),
    step: at.step,
    called: positionWords(procedure, at.step),
    field: at.field,
  });
  const answers = new Map(answered.standing.map(({ finding, answer }) => [finding, toldAnswer(answer)]));
  return {
    file,
    id: procedure.id,
    title: procedure.title,
    sheet: chosen.sheet,
    checked: checked.checked,
    findings: checked.findings.map((finding) => {
      const { at, ...rest } = finding;
      return { ...rest, ...spot(at), answer: answers.get(finding) ?? null };
    }),
    notChecked: checked.notChecked.map(({ at, ...rest }) => ({ ...rest, at: at && spot(at) })),
    openAnswers: answered.reopened.map(({ answer, because }) => ({
      ...spot(answer.at),
      ...places.ofAnswer(answer),
      check: answer.check,
      ...toldAnswer(answer),
      because,
    })),
    crashed: checked.crashed,
    remarks: chosen.remarks,
  };
}

const toldAnswer = ({ kind, reason, by, on, until }: ReportedAnswer): ReportedAnswer => ({
  kind,
  reason,
  by,
  on,
  until,
});
