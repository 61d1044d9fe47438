// Every check that is asked, by its number in the catalogue. A new check is its file, its test and a line here.
import type { Rule } from '../rule.ts';
import { actionHiddenInNote } from './action-hidden-in-note.ts';
import { altitudeReferenceMissing } from './altitude-reference-missing.ts';
import { bandTooThin } from './band-too-thin.ts';
import { branchGapOrOverlap } from './branch-gap-or-overlap.ts';
import { branchGoesNowhere } from './branch-goes-nowhere.ts';
import { callWithoutAnswer } from './call-without-answer.ts';
import { directionWords } from './direction-words.ts';
import { doerChecksOwnWork } from './doer-checks-own-work.ts';
import { elasticWords } from './elastic-words.ts';
import { emptyReply } from './empty-reply.ts';
import { entryExitStateMissing } from './entry-exit-state-missing.ts';
import { flapAboveLimit } from './flap-above-limit.ts';
import { flapSkip } from './flap-skip.ts';
import { flapTooHigh } from './flap-too-high.ts';
import { flapTooSlow } from './flap-too-slow.ts';
import { gatesOutOfOrder } from './gates-out-of-order.ts';
import { ifComesLast } from './if-comes-last.ts';
import { labelNotInModeSet } from './label-not-in-mode-set.ts';
import { negativeWording } from './negative-wording.ts';
import { noTrigger } from './no-trigger.ts';
import { nobodyDoesIt } from './nobody-does-it.ts';
import { notACommand } from './not-a-command.ts';
import { shallShouldDrift } from './shall-should-drift.ts';
import { speedReferenceMissing } from './speed-reference-missing.ts';
import { targetOutsideBand } from './target-outside-band.ts';
import { tooLowToTouch } from './too-low-to-touch.ts';
import { twoActionsOneStep } from './two-actions-one-step.ts';
import { twoOwners } from './two-owners.ts';
import { twoTriggersOneMoment } from './two-triggers-one-moment.ts';
import { undefinedActorWord } from './undefined-actor-word.ts';
import { unitMissing } from './unit-missing.ts';
import { vSpeedsOrder } from './v-speeds-order.ts';

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
  twoActionsOneStep,
  notACommand,
  negativeWording,
  elasticWords,
  undefinedActorWord,
  shallShouldDrift,
  unitMissing,
  altitudeReferenceMissing,
  speedReferenceMissing,
  directionWords,
  labelNotInModeSet,
  flapAboveLimit,
  flapTooSlow,
  flapSkip,
  bandTooThin,
  flapTooHigh,
  targetOutsideBand,
  vSpeedsOrder,
  gatesOutOfOrder,
  tooLowToTouch,
];
