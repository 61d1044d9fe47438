import type { Witness } from '../check/finding.ts';
import { wordOfField } from '../diff/describe.ts';

/** The witness as one line. */
export function witnessWords(witness: Witness): string {
  switch (witness.kind) {
    case 'text':
      return `${wordOfField(witness.field)}: “${witness.quote}”`;
    case 'absent':
      return `${wordOfField(witness.field)}: nothing is written there`;
    default:
      return witness.says;
  }
}
