// Every check that is asked, by its number in the catalogue. A new check is its file, its test and a line here.
import type { Rule } from '../rule.ts';
import { actionHiddenInNote } from './action-hidden-in-note.ts';
import { altitudeReferenceMissing } from './altitude-reference-missing.ts';
import { branchGapOrOverlap } from './branch-gap-or-overlap.ts';
import { branchGoesNowhere } from './branch-goes-nowhere.ts';
import { callWithoutAnswer } from './call-without-answer.ts';
import { doerChecksOwnWork } from './doer-checks-own-work.ts';
import { emptyReply } from './empty-reply.ts';
import { entryExitStateMissing } from './entry-exit-state-missing.ts';
import { flapAboveLimit } from './flap-above-limit.ts';
import { flapSkip } from './flap-skip.ts';
import { flapTooSlow } from './flap-too-slow.ts';
import { gatesOutOfOrder } from './gates-out-of-order.ts';
import { ifComesLast } from './if-comes-last.ts';
import { noTrigger } from './no-trigger.ts';
import { nobodyDoesIt } from './nobody-does-it.ts';
import { speedReferenceMissing } from './speed-reference-missing.ts';
import { targetOutsideBand } from './target-outside-band.ts';
import { twoOwners } from './two-owners.ts';
import { twoTriggersOneMoment } from './two-triggers-one-moment.ts';
import { unitMissing } from './unit-missing.ts';

export const rules: readonly Rule[] = [
  nobodyDoesIt,
  twoOwners,
  doerChecksOwnWork,
  callWithoutAnswer,
  emptyReply,
  noTrigger,
  twoTriggersOneMoment,
  branchGapOrOverlap,
  branchGoesNowhere,
  actionHiddenInNote,
  ifComesLast,
  entryExitStateMissing,
  unitMissing,
  altitudeReferenceMissing,
  speedReferenceMissing,
  flapAboveLimit,
  flapTooSlow,
  flapSkip,
  targetOutsideBand,
  gatesOutOfOrder,
];
