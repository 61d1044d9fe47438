import { z } from 'zod';

const list = z.array(z.string().min(1).max(60)).max(300);

/** The house's wording. Lists are compared in lower case, by whole words. */
export const wordsPolicy = z.strictObject({
  /** Says nothing that can be measured (check 26). */
  elastic: list,
  /** Not a role (check 28). */
  vagueActors: list,
  /** Ritual answers where a value or a position is wanted (check 6). */
  emptyReplies: list,
  /** Negative wording in an action (check 25). */
  negative: list,
  /** A limit is never said with these (check 31). */
  weakForce: list,
  /** Understood without being in the term list (check 27). */
  knownAbbreviations: list,
  /** Phrases of air traffic control that no callout may equal (check 30). */
  reserved: list,
  /** Spoken words in one call, at most. */
  callWords: z.number().int().positive().max(50),
});
