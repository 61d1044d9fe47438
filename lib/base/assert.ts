/** Misuse by the programmer. Never used for what a person typed: that is returned as an `Err`. */
export function assert(condition: unknown, sentence: string): asserts condition {
  if (!condition) throw new Error(sentence);
}

/** Every case of a union was handled, or the compiler says so. */
export function never(value: never): never {
  throw new Error(`not handled: ${JSON.stringify(value)}`);
}
