// The one vocabulary of refusals: what happened, what was kept, what to do. Screens print the sentence and act on the code.

export const SENTENCES = {
  'signed-out': 'You are signed out. What you wrote is kept; sign in again to go on.',
  'not-permitted': 'Your role does not include this. Nothing was changed; an administrator can change roles.',
  unknown: 'There is nothing by that address for you here. Nothing was changed; go back to where the link came from.',
  'not-understood': 'The form could not be read. Nothing was changed; put right what is marked and send it again.',
  'same-person-edited': 'You edited this text, so another person must do this. Nothing was changed.',
  'same-person-reviewed': 'You reviewed this candidate, so another person must sign. Nothing was changed.',
  'same-person-waived': 'You waived a finding of this candidate, so another person must sign. Nothing was changed.',
  'draft-closed':
    'This draft was submitted and is closed. Later edits go to the next draft of the procedure; open it there.',
  'draft-open': 'This procedure has an open draft already. Nothing was changed; go on in that draft.',
  'draft-malformed': 'The draft holds something that is not a step. Nothing was frozen; put right what is listed.',
  'stop-open':
    'A STOP is open. Nothing was frozen; fix it, or have a standards captain waive it with reason and expiry.',
  'answer-missing': 'A finding waits for its answer. Nothing was frozen; fix it or answer it with your reason.',
  'check-crashed':
    'A check failed to run, so the text was not proven. Nothing was frozen; report the check that is named.',
  'nothing-changed': 'The draft says the same as the issue in force. Nothing was frozen.',
  'already-under-review':
    'A candidate of this procedure is under review. The draft is kept; submit when the review is over.',
  'already-submitted':
    'This draft was submitted a moment ago by someone else. Their candidate stands; look at it in review.',
  'not-waiting':
    'This candidate is no longer where it can be decided. Nothing was changed; open it again to see where it is.',
  'finding-gone': 'That finding is not there any more. Nothing was stored; the text has changed since, look again.',
  'not-answerable':
    'This finding cannot be settled that way: an ANSWER takes an answer, a STOP a waiver. Nothing was stored.',
  'reason-too-thin': 'The reason must say why it is right here. Nothing was stored; say it in a sentence of its own.',
  'expiry-wrong':
    'A waiver ends on a day from today on, and no later than the policy allows. Nothing was stored; choose another day.',
  'wrong-password': 'The password is not right. Nothing was signed; type it again.',
  'password-too-short': 'A password has at least 10 characters. Nothing was changed; choose a longer one.',
  'sign-in-failed': 'Name or password is not right. Type both again.',
  'too-many-attempts': 'Too many attempts. Nothing was changed; wait 15 minutes, then try again.',
  'effective-in-past': 'An issue cannot come in force in the past. Nothing was signed; choose now or a later time.',
  'effective-before-later':
    'An issue of this procedure is already to come in force later than that. Nothing was signed; choose a later time.',
  'content-moved': 'The content does not match its hash any more. Nothing was signed; call the administrator.',
  'label-taken': 'A step carries a label that belongs to another step. Nothing was frozen; clear or change it.',
  'not-in-force': 'That issue is not in force for this tail. Nothing was stored; open the one that is.',
  'name-taken': 'That sign-in name is in use. Nothing was stored; choose another.',
  'last-administrator':
    'Someone must be able to set this up: the last administrator cannot be taken away. Nothing was changed.',
  'file-unreadable':
    'The file could not be read as it stands. Nothing was stored; put right the lines that are listed.',
  'exists-already': 'That exists already. Nothing was changed.',
  'no-policy':
    'The operator has no policy yet, so nothing can be checked. The draft is kept; an administrator adds the policy.',
  'too-large': 'That is larger than this house takes. Nothing was stored; make it smaller.',
  unexpected:
    'Something went wrong here. Nothing was changed; try again, and if it stays, report the number that is shown.',
} as const;

export type ProblemCode = keyof typeof SENTENCES;

/** `details`: lines for the person, such as the finding that is open. `id`: only with `unexpected`, and in the log. */
export type Problem = {
  readonly code: ProblemCode;
  readonly sentence: string;
  readonly details: readonly string[];
  readonly id?: string;
};

export const problem = (code: ProblemCode, details: readonly string[] = []): Problem => ({
  code,
  sentence: SENTENCES[code],
  details,
});

/** Carries a problem out of a transaction, which is thereby undone. Never leaves lib/server: `within` returns it. */
export class Refused extends Error {
  readonly problem: Problem;
  constructor(code: ProblemCode, details: readonly string[] = []) {
    super(code);
    this.problem = problem(code, details);
  }
}

/** Logs an error that nobody foresaw and gives what may be shown of it: its number. */
export function unexpected(error: unknown): Problem {
  const id = crypto.randomUUID().slice(0, 8);
  console.error(`unexpected ${id}`, error);
  return { ...problem('unexpected', [`Number ${id}`]), id };
}
