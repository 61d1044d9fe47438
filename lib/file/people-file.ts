// The people and the fleet of an operator as files. No passwords: those are set where the people are put in.
import { z } from 'zod';
import { err, ok, type Result } from '../base/result.ts';
import type { Fleet, Person } from '../library/library.ts';
import { type FileProblem, pathText } from './problem.ts';
import { type Read, readAs } from './validate.ts';

const text = z.string().min(1).max(200);
const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
const PERSON_ROLES = [
  'technical pilot',
  'training captain',
  'standards captain',
  'approver',
  'line pilot',
  'auditor',
  'administrator',
] as const;

const peopleFormat = z.strictObject({
  format: z.literal('cuewright-people/1'),
  people: z.array(
    z.strictObject({
      id: text,
      name: text,
      'sign-in': text,
      title: text,
      roles: z.array(z.strictObject({ role: z.enum(PERSON_ROLES), from: day, until: day.optional() })),
    }),
  ),
});

const fleetFormat = z.strictObject({
  format: z.literal('cuewright-fleet/1'),
  operator: text,
  name: text,
  type: text,
  'sheet-revision': text,
  tails: z.array(
    z.strictObject({
      registration: text,
      type: text,
      options: z.array(
        z.strictObject({ option: z.literal('standard'), value: z.enum(['A', 'B']), from: day, until: day.optional() }),
      ),
    }),
  ),
});

export function readPeopleFile(fileText: string, name: string): Result<readonly Person[], FileProblem[]> {
  const read = readAs(peopleFormat, fileText, name, { endMark: true });
  if (!read.ok) return read;
  const { people } = read.value.value;
  const problems = [
    ...twice(
      read.value,
      'people',
      'id',
      people.map((person) => person.id),
    ),
    ...twice(
      read.value,
      'people',
      'sign-in',
      people.map((person) => person['sign-in']),
    ),
    ...people.flatMap((person, i) => backwards(read.value, ['people', i, 'roles'], person.roles)),
  ];
  if (problems.length > 0) return err(problems);
  return ok(
    people.map((person) => ({
      id: person.id,
      name: person.name,
      signIn: person['sign-in'],
      title: person.title,
      roles: person.roles.map((role) => ({ ...role, until: role.until ?? null })),
    })),
  );
}

export function readFleetFile(fileText: string, name: string): Result<Fleet, FileProblem[]> {
  const read = readAs(fleetFormat, fileText, name, { endMark: true });
  if (!read.ok) return read;
  const file = read.value.value;
  const problems = [
    ...twice(
      read.value,
      'tails',
      'registration',
      file.tails.map((tail) => tail.registration),
    ),
    ...file.tails.flatMap((tail, i) => backwards(read.value, ['tails', i, 'options'], tail.options)),
  ];
  if (problems.length > 0) return err(problems);
  return ok({
    operator: file.operator,
    name: file.name,
    type: file.type,
    sheetRevision: file['sheet-revision'],
    tails: file.tails.map((tail) => ({
      ...tail,
      options: tail.options.map((option) => ({ ...option, until: option.until ?? null })),
    })),
  });
}

type Path = readonly (string | number)[];
type Where = Read<unknown>['where'];

function twice({ where }: { where: Where }, part: string, field: string, names: readonly string[]): FileProblem[] {
  return names.flatMap((name, i) => {
    if (names.indexOf(name) === i) return [];
    const path = [part, i, field];
    return [{ ...where(path), path: pathText(path), message: `${name} stands in ${part} twice.`, expected: [] }];
  });
}

/** A period ends after it began, and is a day of the calendar. */
function backwards(
  { where }: { where: Where },
  above: Path,
  periods: readonly { from: string; until?: string }[],
): FileProblem[] {
  return periods.flatMap(({ from, until }, i) => {
    const real = [from, until].every((date) => date === undefined || isDay(date));
    if (real && (until === undefined || from < until)) return [];
    const path = [...above, i];
    const message = real ? `The period ends on ${until}, before it begins.` : 'That day is not in the calendar.';
    return [{ ...where(path), path: pathText(path), message, expected: ['2026-01-05'] }];
  });
}

const isDay = (date: string): boolean => {
  const at = new Date(`${date}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(date);
};
