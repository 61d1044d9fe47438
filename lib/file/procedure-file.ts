// A procedure as a file, in and out. The format is told in format.md; reading and writing are each other's inverse.
// This folder reads stored content and nothing else: it checks no airmanship and touches no disk.
import { z } from 'zod';
import { assert } from '../base/assert.ts';
import { err, ok, type Result } from '../base/result.ts';
import { allSteps, type Envelope, type Procedure, type ProcedureId, type Range } from '../procedure/procedure.ts';
import { answerProblems, type FiledAnswer, readAnswer, writeAnswer } from './answer-file.ts';
import type { Plain } from './plain-yaml.ts';
import { type FileProblem, pathText } from './problem.ts';
import { type ProcedureFormat, procedureFormat } from './procedure-format.ts';
import { RANGE_LOOKS, type RangeKind, readRange, writeRange } from './range.ts';
import { stated } from './stated.ts';
import { readBranch, readState, readStep, writeBranch, writeState, writeStep } from './step-file.ts';
import { type Read, readAs } from './validate.ts';
import { writePlain } from './write-yaml.ts';

export type { FileProblem } from './problem.ts';

const RANGES: readonly RangeKind[] = ['weight', 'elevation', 'temperature', 'wind', 'level'];

/** Reads YAML or JSON. `name` is what the person calls the file; it appears in sentences only. */
export function readProcedureFile(text: string, name: string): Result<Procedure, FileProblem[]> {
  const read = readPlacedProcedure(text, name);
  return read.ok ? ok(read.value.procedure) : read;
}

/** `where`: line and column of a path of the file, such as `['steps', 3, 'do', 'verb']`, from 1; of the nearest thing around
 *  it that is written down. */
export type PlacedProcedure = {
  readonly procedure: Procedure;
  readonly answers: readonly FiledAnswer[];
  readonly where: Read<ProcedureFormat>['where'];
};

export function readPlacedProcedure(text: string, name: string): Result<PlacedProcedure, FileProblem[]> {
  const read = readAs(procedureFormat, text, name, { endMark: true });
  if (!read.ok) return read;
  const problems = [...repeated(read.value), ...ranges(read.value), ...answerProblems(read.value)];
  if (problems.length > 0) return err(problems);
  const { value, where } = read.value;
  return ok({ procedure: toProcedure(value), answers: (value.answers ?? []).map(readAnswer), where });
}

/** YAML with permanent ids, which `readPlacedProcedure` reads back to the same procedure and the same answers. */
export function writeProcedureFile(procedure: Procedure, answers: readonly FiledAnswer[] = []): string {
  const ids = allSteps(procedure).map((step) => step.id);
  assert(new Set(ids).size === ids.length, 'a procedure has every step once');
  return writePlain(fromProcedure(procedure, answers) as Plain);
}

/** The format as JSON Schema, for editors and other programs. */
export function procedureJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(procedureFormat, { target: 'draft-2020-12' });
}

function toProcedure(file: ProcedureFormat): Procedure {
  return {
    id: file.id as ProcedureId,
    title: file.title,
    class: file.class ?? '',
    phases: file.phases ?? [],
    effectivity: {
      type: file.effectivity?.type ?? '',
      standards: file.effectivity?.standards ?? [],
      note: file.effectivity?.note ?? '',
    },
    owner: file.owner ?? '',
    envelope: readEnvelope(file.envelope),
    weightLimit: file['weight-limit'] ?? '',
    entry: readState(file.entry ?? {}),
    exit: readState(file.exit ?? {}),
    leavesTo: file['leaves-to'] ?? [],
    steps: file.steps.map(readStep),
    branches: (file.branches ?? []).map(readBranch),
    rationale: file.rationale ?? '',
  };
}

function fromProcedure(procedure: Procedure, answers: readonly FiledAnswer[]): unknown {
  const { effectivity, envelope } = procedure;
  return stated({
    format: 'cuewright-procedure/1',
    id: procedure.id,
    title: { said: procedure.title },
    class: procedure.class,
    phases: procedure.phases,
    effectivity: stated({ type: effectivity.type, standards: effectivity.standards, note: effectivity.note }),
    owner: procedure.owner,
    envelope: stated({
      ...Object.fromEntries(RANGES.map((kind) => [kind, envelope[kind] && writeRange(kind, envelope[kind])])),
      detents: envelope.detents,
    }),
    'weight-limit': procedure.weightLimit,
    entry: writeState(procedure.entry),
    exit: writeState(procedure.exit),
    'leaves-to': procedure.leavesTo,
    steps: { said: procedure.steps.map(writeStep) },
    branches: procedure.branches.map(writeBranch),
    rationale: procedure.rationale,
    answers: answers.map(writeAnswer),
  });
}

function readEnvelope(file: ProcedureFormat['envelope']): Envelope {
  const range = (kind: RangeKind): Range | null => (file?.[kind] === undefined ? null : readRange(kind, file[kind]));
  return {
    weight: range('weight'),
    elevation: range('elevation'),
    temperature: range('temperature'),
    wind: range('wind'),
    level: range('level'),
    detents: file?.detents ?? [],
  };
}

function ranges({ value, where }: Read<ProcedureFormat>): FileProblem[] {
  return RANGES.flatMap((kind) => {
    const text = value.envelope?.[kind];
    if (text === undefined || readRange(kind, text) !== null) return [];
    const path = ['envelope', kind];
    const message = `"${text}" is no range of ${kind} from the lower end to the higher, with units.`;
    return [{ ...where(path), path: pathText(path), message, expected: [RANGE_LOOKS[kind]] }];
  });
}

/** Permanent ids and labels name one thing each. */
function repeated({ value, where }: Read<ProcedureFormat>): FileProblem[] {
  const seen = { id: new Map<string, string>(), label: new Map<string, string>() };
  const problems: FileProblem[] = [];
  const look = (field: 'id' | 'label', text: string | undefined, path: (string | number)[]) => {
    if (text === undefined || text === '') return;
    const first = seen[field].get(text);
    if (first === undefined) seen[field].set(text, pathText(path));
    else {
      const message = `The ${field} ${text} belongs to ${first} already.`;
      const fix = field === 'id' ? 'Leave the older one, give the other a new id.' : undefined;
      problems.push({
        ...where([...path, field]),
        path: pathText([...path, field]),
        message,
        expected: [],
        ...(fix ? { fix } : {}),
      });
    }
  };
  const steps = (list: ProcedureFormat['steps'], path: (string | number)[]) =>
    list.forEach((step, i) => {
      look('id', step.id, [...path, i]);
      look('label', step.label, [...path, i]);
    });
  steps(value.steps, ['steps']);
  (value.branches ?? []).forEach((branch, i) => {
    look('id', branch.id, ['branches', i]);
    look('label', branch.label, ['branches', i]);
    steps(branch.steps, ['branches', i, 'steps']);
  });
  return problems;
}
