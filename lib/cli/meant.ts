import { nearest } from '../gate/nearest.ts';

/** ` Did you mean check?`, or nothing where no known word is near. */
export function meant(typed: string, known: readonly string[], mark = ''): string {
  const near = nearest(typed, known);
  return near === null ? '' : ` Did you mean ${mark}${near}?`;
}
