// Every check that is asked, by its number in the catalogue. A new check is its file, its test and a line here.
import type { Rule } from '../rule.ts';
import { actionHiddenInNote } from './action-hidden-in-note.ts';
import { additiveBustsFlap } from './additive-busts-flap.ts';
import { altimeterChange } from './altimeter-change.ts';
import { altitudeReferenceMissing } from './altitude-reference-missing.ts';
import { areaSpeedLimit } from './area-speed-limit.ts';
import { automationOffTwin } from './automation-off-twin.ts';
import { bandTooThin } from './band-too-thin.ts';
import { branchGapOrOverlap } from './branch-gap-or-overlap.ts';
import { branchGoesNowhere } from './branch-goes-nowhere.ts';
import { buttonDoesNothing } from './button-does-nothing.ts';
import { callWithoutAnswer } from './call-without-answer.ts';
import { callsCollide } from './calls-collide.ts';
import { cannotSlowDown } from './cannot-slow-down.ts';
import { captureStartsBeforeYouAreReady } from './capture-starts-before-you-are-ready.ts';
import { changedWithoutMark } from './changed-without-mark.ts';
import { climbGradientShort } from './climb-gradient-short.ts';
import { coldAltitudes } from './cold-altitudes.ts';
import { crossOverPoint } from './cross-over-point.ts';
import { deadLink } from './dead-link.ts';
import { deferredAndForgotten } from './deferred-and-forgotten.ts';
import { differsFromManufacturer } from './differs-from-manufacturer.ts';
import { directionWords } from './direction-words.ts';
import { doerChecksOwnWork } from './doer-checks-own-work.ts';
import { effectivityHoleOrOverlap } from './effectivity-hole-or-overlap.ts';
import { elasticWords } from './elastic-words.ts';
import { emptyReply } from './empty-reply.ts';
import { engagedInWrongMode } from './engaged-in-wrong-mode.ts';
import { engineNotReady } from './engine-not-ready.ts';
import { engineOutPath } from './engine-out-path.ts';
import { engineOutTwinMissing } from './engine-out-twin-missing.ts';
import { entryExitStateMissing } from './entry-exit-state-missing.ts';
import { fasterThanTheFlapMoves } from './faster-than-the-flap-moves.ts';
import { feedbackUnanswered } from './feedback-unanswered.ts';
import { flapAboveLimit } from './flap-above-limit.ts';
import { flapSkip } from './flap-skip.ts';
import { flapTooHigh } from './flap-too-high.ts';
import { flapTooSlow } from './flap-too-slow.ts';
import { gateVsMinima } from './gate-vs-minima.ts';
import { gatesOutOfOrder } from './gates-out-of-order.ts';
import { gearLimits } from './gear-limits.ts';
import { glideWithoutCourse } from './glide-without-course.ts';
import { goAroundBelowAltitude } from './go-around-below-altitude.ts';
import { handOverGap } from './hand-over-gap.ts';
import { hardAltitudeMissed } from './hard-altitude-missed.ts';
import { headDownLow } from './head-down-low.ts';
import { highAerodrome } from './high-aerodrome.ts';
import { holdAndTurbulence } from './hold-and-turbulence.ts';
import { icingIncrement } from './icing-increment.ts';
import { ifComesLast } from './if-comes-last.ts';
import { initialClimbSpeed } from './initial-climb-speed.ts';
import { interruptIt } from './interrupt-it.ts';
import { invisibleTrigger } from './invisible-trigger.ts';
import { killerItemTooFarBack } from './killer-item-too-far-back.ts';
import { knobKillsCapture } from './knob-kills-capture.ts';
import { labelNotInModeSet } from './label-not-in-mode-set.ts';
import { listTooLong } from './list-too-long.ts';
import { liveBeforeReady } from './live-before-ready.ts';
import { loopWithoutExit } from './loop-without-exit.ts';
import { memoryNotInList } from './memory-not-in-list.ts';
import { modeCheckTooLate } from './mode-check-too-late.ts';
import { negativeWording } from './negative-wording.ts';
import { noTrigger } from './no-trigger.ts';
import { nobodyDoesIt } from './nobody-does-it.ts';
import { nobodyReadsAutoChanges } from './nobody-reads-auto-changes.ts';
import { nobodyWatchesThePath } from './nobody-watches-the-path.ts';
import { normalToNonNormalJoin } from './normal-to-non-normal-join.ts';
import { notACommand } from './not-a-command.ts';
import { notArmedToStop } from './not-armed-to-stop.ts';
import { notEnoughTime } from './not-enough-time.ts';
import { nowhereToResume } from './nowhere-to-resume.ts';
import { oddOneOut } from './odd-one-out.ts';
import { oldCopyStillShown } from './old-copy-still-shown.ts';
import { oneControlTwoMeanings } from './one-control-two-meanings.ts';
import { oneFleetTwoNumbers } from './one-fleet-two-numbers.ts';
import { oneHandIrreversible } from './one-hand-irreversible.ts';
import { ownerLostAtHandover } from './owner-lost-at-handover.ts';
import { reasonTooThin } from './reason-too-thin.ts';
import { reduceAndAccelerateOrder } from './reduce-and-accelerate-order.ts';
import { samePerson } from './same-person.ts';
import { sameWordsDifferentValue } from './same-words-different-value.ts';
import { selectedAltitudeVsClearance } from './selected-altitude-vs-clearance.ts';
import { shallShouldDrift } from './shall-should-drift.ts';
import { signedSomethingElse } from './signed-something-else.ts';
import { silentReversion } from './silent-reversion.ts';
import { sopAndListDisagree } from './sop-and-list-disagree.ts';
import { soundAlikeCalls } from './sound-alike-calls.ts';
import { speedReferenceMissing } from './speed-reference-missing.ts';
import { speedRestrictionsFight } from './speed-restrictions-fight.ts';
import { speedUnprotected } from './speed-unprotected.ts';
import { speedbrakeWithFlap } from './speedbrake-with-flap.ts';
import { stableGateIncomplete } from './stable-gate-incomplete.ts';
import { stableGateNotReachable } from './stable-gate-not-reachable.ts';
import { staleSource } from './stale-source.ts';
import { startleCase } from './startle-case.ts';
import { stepNeverReached } from './step-never-reached.ts';
import { supplementaryOverridesSilently } from './supplementary-overrides-silently.ts';
import { targetOutsideBand } from './target-outside-band.ts';
import { terrainFloor } from './terrain-floor.ts';
import { thrustTimeLimit } from './thrust-time-limit.ts';
import { tooFastIntoLevel } from './too-fast-into-level.ts';
import { tooHighToFly } from './too-high-to-fly.ts';
import { tooLowToTouch } from './too-low-to-touch.ts';
import { tooMuchPerPilot } from './too-much-per-pilot.ts';
import { trExpiredOrClashing } from './tr-expired-or-clashing.ts';
import { trLost } from './tr-lost.ts';
import { twoActionsOneStep } from './two-actions-one-step.ts';
import { twoNamesOneThing } from './two-names-one-thing.ts';
import { twoOwners } from './two-owners.ts';
import { twoTriggersOneMoment } from './two-triggers-one-moment.ts';
import { undefinedAbbreviation } from './undefined-abbreviation.ts';
import { undefinedActorWord } from './undefined-actor-word.ts';
import { unitMissing } from './unit-missing.ts';
import { vSpeedsOrder } from './v-speeds-order.ts';
import { vrefDetentMismatch } from './vref-detent-mismatch.ts';
import { waivedForever } from './waived-forever.ts';
import { wetAndContaminated } from './wet-and-contaminated.ts';
import { windLimitsAgree } from './wind-limits-agree.ts';
import { wrongWordsExpected } from './wrong-words-expected.ts';

export const rules: readonly Rule[] = [
  nobodyDoesIt,
  twoOwners,
  ownerLostAtHandover,
  doerChecksOwnWork,
  callWithoutAnswer,
  emptyReply,
  noTrigger,
  invisibleTrigger,
  twoTriggersOneMoment,
  stepNeverReached,
  loopWithoutExit,
  branchGapOrOverlap,
  branchGoesNowhere,
  nowhereToResume,
  deferredAndForgotten,
  killerItemTooFarBack,
  listTooLong,
  actionHiddenInNote,
  ifComesLast,
  oneHandIrreversible,
  memoryNotInList,
  entryExitStateMissing,
  twoActionsOneStep,
  notACommand,
  negativeWording,
  elasticWords,
  undefinedAbbreviation,
  undefinedActorWord,
  twoNamesOneThing,
  soundAlikeCalls,
  shallShouldDrift,
  unitMissing,
  altitudeReferenceMissing,
  speedReferenceMissing,
  directionWords,
  labelNotInModeSet,
  sameWordsDifferentValue,
  flapAboveLimit,
  flapTooSlow,
  flapSkip,
  bandTooThin,
  fasterThanTheFlapMoves,
  flapTooHigh,
  gearLimits,
  targetOutsideBand,
  vrefDetentMismatch,
  icingIncrement,
  additiveBustsFlap,
  vSpeedsOrder,
  initialClimbSpeed,
  areaSpeedLimit,
  holdAndTurbulence,
  crossOverPoint,
  tooHighToFly,
  climbGradientShort,
  thrustTimeLimit,
  cannotSlowDown,
  speedbrakeWithFlap,
  wetAndContaminated,
  highAerodrome,
  gatesOutOfOrder,
  reduceAndAccelerateOrder,
  tooLowToTouch,
  selectedAltitudeVsClearance,
  hardAltitudeMissed,
  speedRestrictionsFight,
  captureStartsBeforeYouAreReady,
  tooFastIntoLevel,
  stableGateIncomplete,
  stableGateNotReachable,
  gateVsMinima,
  nobodyWatchesThePath,
  coldAltitudes,
  altimeterChange,
  terrainFloor,
  engineOutPath,
  windLimitsAgree,
  buttonDoesNothing,
  wrongWordsExpected,
  handOverGap,
  notArmedToStop,
  knobKillsCapture,
  silentReversion,
  nobodyReadsAutoChanges,
  glideWithoutCourse,
  speedUnprotected,
  goAroundBelowAltitude,
  oneControlTwoMeanings,
  automationOffTwin,
  modeCheckTooLate,
  engagedInWrongMode,
  callsCollide,
  tooMuchPerPilot,
  notEnoughTime,
  headDownLow,
  engineNotReady,
  interruptIt,
  startleCase,
  oneFleetTwoNumbers,
  sopAndListDisagree,
  oddOneOut,
  effectivityHoleOrOverlap,
  engineOutTwinMissing,
  supplementaryOverridesSilently,
  deadLink,
  normalToNonNormalJoin,
  differsFromManufacturer,
  staleSource,
  changedWithoutMark,
  reasonTooThin,
  samePerson,
  signedSomethingElse,
  liveBeforeReady,
  trExpiredOrClashing,
  trLost,
  oldCopyStillShown,
  waivedForever,
  feedbackUnanswered,
];
