// `cuewright fly`: the flight of the screen, with the same engine, the same figures and the same findings.
import { checkProcedure } from '../check/check.ts';
import { withCrew } from '../check/flown.ts';
import { placeOf } from '../check/flown-points.ts';
import { rulesThatFly } from '../check/stage.ts';
import { readPlacedProcedure } from '../file/procedure-file.ts';
import { flyProcedure } from '../flight/fly.ts';
import { ceilingMargin, STABLE, stableHeight } from '../flight/measures.ts';
import { conditionsFor, settingsFor } from '../flight/start.ts';
import { sweep, sweepAll, weightRange, weightsOf } from '../flight/sweep.ts';
import type { Trace } from '../flight/trace.ts';
import { chooseSheet } from './choose-sheet.ts';
import { EXIT, type Exit } from './exit.ts';
import type { FlyCommand } from './fly-arguments.ts';
import { csvOf } from './fly-csv.ts';
import { calledBy, type FlyReport, flownReport } from './fly-report.ts';
import { flyText } from './fly-text.ts';
import { readGrounds } from './grounds.ts';
import { nameOf, readText, type Unreadable, wholeFile } from './input.ts';
import { pathOf } from './place.ts';

/** Prints the flight to standard output, in the form asked for, and answers how the command ends. */
export async function fly(command: FlyCommand): Promise<Exit> {
  const { report, trace } = await flown(command);
  if (command.format === 'csv') {
    if (trace !== null) process.stdout.write(csvOf(trace));
    if (trace === null || report.exit === EXIT.unreadable) process.stderr.write(flyText(report));
  } else {
    process.stdout.write(command.format === 'json' ? `${JSON.stringify(report, null, 2)}\n` : flyText(report));
  }
  return report.exit;
}

type Answer = { readonly report: FlyReport; readonly trace: Trace | null };

const refused = (unreadable: readonly Unreadable[]): Answer => ({
  report: { form: 'cuewright-fly/1', exit: EXIT.unreadable, against: null, flight: null, unreadable },
  trace: null,
});

async function flown(command: FlyCommand): Promise<Answer> {
  const { file } = command;
  const grounds = await readGrounds(command);
  if (!grounds.ok) return refused(grounds.error);
  const text = await readText(file);
  const read = text.ok ? readPlacedProcedure(text.value, nameOf(file)) : text;
  if (!read.ok) return refused([{ file, problems: read.error }]);
  const { procedure, where } = read.value;
  const { chosen, remarks } = chooseSheet(procedure, grounds.value.sheets);
  if (chosen === null) return refused([{ file, problems: remarks.map((remark) => wholeFile(remark)) }]);

  const { sheet } = chosen;
  const { policy } = grounds.value.policy;
  const library = grounds.value.library?.library ?? null;
  const facts = { sheet, policy, library };
  const settings = settingsFor(procedure, sheet);
  const place = placeOf(procedure, library);
  const weights = weightsOf(weightRange(procedure, sheet));
  const any = conditionsFor(procedure, facts, { ...command.given, weight: command.weight ?? weights[0]! }, place);
  const plan = { weights, winds: [any.wind], temperatures: [any.temperature], sensitive: false };
  const measure = STABLE in settings.marks ? stableHeight : ceilingMargin;
  const swept = sweepAll(sweep(procedure, facts, any, settings, plan, measure));
  const conditions = command.weight === null ? { ...any, weight: swept.worst?.weight ?? any.weight } : any;
  const trace = flyProcedure(procedure, facts, conditions, settings);
  const { findings, notChecked, crashed } = checkProcedure(procedure, facts, rulesThatFly());
  const stops = findings.some(({ severity }) => severity === 'STOP');
  const failed = crashed.map(({ check, number, error }) => ({
    check,
    number,
    because: `the check itself failed: ${error}`,
  }));
  const report: FlyReport = {
    form: 'cuewright-fly/1',
    exit: trace.end.reason === 'refused' ? EXIT.unreadable : stops ? EXIT.stop : EXIT.clear,
    against: {
      sheet: { file: chosen.file, type: sheet.type, revision: sheet.revision },
      policy: { file: grounds.value.policy.file, operator: policy.operator, version: policy.version },
      library: grounds.value.library && { folder: grounds.value.library.folder },
    },
    flight: {
      ...{ file, id: procedure.id, title: procedure.title, settings: settings.name, worst: swept.says },
      ...flownReport(procedure, withCrew(procedure, facts, settings, trace)),
      findings: findings.map(({ check, number, severity, at, message, witness }) => ({
        ...{ check, number, severity, ...where(pathOf(procedure, at)) },
        ...{ step: at.step, called: calledBy(procedure, at.step), message, witness },
      })),
      notChecked: [...notChecked.map(({ at: _, ...rest }) => rest), ...failed],
    },
    unreadable: [],
  };
  return { report, trace };
}
