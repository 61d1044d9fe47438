import type { FileProblem } from '../file/problem.ts';

/** Each problem of a file as one line for the person. */
export const fileProblemLines = (problems: readonly FileProblem[]): string[] =>
  problems.map(({ line, column, message, fix }) => `Line ${line}, column ${column}: ${message}${fix ? ` ${fix}` : ''}`);
