// How much a draft may hold. Each limit is a name with a sentence, so that a refusal says what to do about it.

export type Limit = { readonly most: number; readonly says: string };

export const STEPS: Limit = {
  most: 500,
  says: 'A procedure holds at most 500 steps. Split it into two procedures, or move a variation into one of its own.',
};
export const BRANCHES: Limit = { most: 60, says: 'A procedure holds at most 60 branches.' };
export const FIELD_CHARACTERS: Limit = {
  most: 8_000,
  says: 'One field holds at most 8 000 characters. Put the long text into the rationale or a document that the source names.',
};
export const STEP_CHARACTERS: Limit = {
  most: 40_000,
  says: 'One step holds at most 40 000 characters in all its fields. Split the step.',
};
export const NOTICES: Limit = { most: 20, says: 'At most 20 notices stand before one step.' };
export const LIST_ENTRIES: Limit = { most: 64, says: 'One list holds at most 64 entries.' };
/** Of one change on its way to the server, in bytes. */
export const CHANGE_BYTES: Limit = {
  most: 1_500_000,
  says: 'This change is larger than 1.5 MB, so it was not taken over. Undo it, or paste it in parts.',
};
/** Of all changes that a draft ever took, in bytes. */
export const DRAFT_BYTES: Limit = {
  most: 60_000_000,
  says: 'The history of this draft has reached 60 MB. Submit it, or start the next draft from it.',
};
