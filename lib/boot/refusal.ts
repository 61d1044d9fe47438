/**
 * An expected failure of starting up. Its message is a whole sentence that says what to do; it is shown without a stack.
 */
export class Refusal extends Error {
  override name = 'Refusal';
}

const text = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The sentence for whatever went wrong while starting: known causes get their cure, the rest their own words. */
export function sentenceFor(error: unknown): string {
  if (error instanceof Refusal) return error.message;
  const message = text(error);
  const code = (error as { code?: unknown } | null)?.code;
  if (code === 'ENOSPC' || code === 'EDQUOT' || code === '53100' || /no space left|ENOSPC|disk quota/i.test(message)) {
    return `The disk is full (${message.split('\n')[0]}). Free some space, then run the same command again: it takes up where it stopped.`;
  }
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') {
    return `This account may not write where it must (${message}). Give it the folder, or set CUEWRIGHT_DATA to one it owns.`;
  }
  return message;
}
