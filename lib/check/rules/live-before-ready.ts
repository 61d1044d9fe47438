import type { Policy } from '../../policy/policy.ts';
import { daysBetween, type GoingLive, NOT_KNOWN, type Share, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

export const liveBeforeReady = defineRule({
  id: 'live-before-ready',
  number: 113,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'publication',
  phases: 'all',
  title: 'Live before ready',
  says: 'The effective date lies not before the signature, not before the answer of the authority where one is needed, and leaves the days that the policy gives to train and to acknowledge; unless each crew is briefed and that is recorded.',
  why: 'A new way to use the brakes was first met in a snowstorm.',
  source: { text: 'NTSB AAR-07/06', seen: false },
  needs: ['governance', 'policy'],
  reads: [],
  messages: {
    'before-signature': 'In force from {effective}, signed on {signed}: for those days nobody had approved it.',
    'before-authority': 'In force from {effective}, but {answer}: it may have to be taken back from crews who fly it.',
    untrained: 'In force from {effective}, trained {have} of {of}: the rest meet it for the first time in flight.',
    unread: 'In force from {effective}, acknowledged by {have} of {of}: the rest fly a text that they have not seen.',
  },
  examples: {
    bad: '{governance: {goingLive: {effective: 2026-11-26, signed: 2026-11-25, authority: {wanted: false, given: null}, training: {wanted: true, done: {have: 12, of: 96}}, acknowledged: {have: 96, of: 96}, briefed: false}}}',
    good: '{governance: {goingLive: {effective: 2026-12-25, signed: 2026-11-25, authority: {wanted: false, given: null}, training: {wanted: true, done: {have: 12, of: 96}}, acknowledged: {have: 0, of: 96}, briefed: false}}}',
  },
  run({ governance, policy, unasked }, report) {
    const { goingLive, today } = governance;
    if (goingLive === null) return unasked(NOT_KNOWN.goingLive, WHOLE);
    const { effective, signed, authority, training, acknowledged, briefed } = goingLive;
    const witness = (says: string) => inOrder(effective, today, `on ${today}: effective ${effective}, ${says}`);
    const at = WHOLE;
    if (effective < signed) {
      const data = { effective, signed };
      report({
        at,
        message: 'before-signature',
        data,
        witness: witness(`signed ${signed}`),
        read: [effective, signed],
      });
    }
    if (authority === null) unasked('nobody has said whether the authority must answer', WHOLE);
    else if (authority.wanted && (authority.given === null || authority.given > effective)) {
      const answer =
        authority.given === null ? 'the authority has not answered' : `accepted only on ${authority.given}`;
      const data = { effective, answer };
      report({ at, message: 'before-authority', data, witness: witness(answer), read: [effective, answer] });
    }
    if (training === null) unasked('nobody has said whether crews must be trained', WHOLE);
    if (briefed || enoughTime(goingLive, today, policy)) return;
    const short = (share: Share): boolean => share.have < share.of * policy.signOff.acknowledgedShare;
    const tell = (message: 'untrained' | 'unread', { have, of }: Share) => {
      const read = [effective, policy.signOff.acknowledgedShare, policy.signOff.familiarisationDays];
      report({ at, message, data: { effective, have, of }, witness: witness(`${have} of ${of}`), read });
    };
    if (training?.wanted && short(training.done)) tell('untrained', training.done);
    if (short(acknowledged)) tell('unread', acknowledged);
  },
});

/** Before the policy's days have begun to run there is time left, and nothing is late. */
const enoughTime = ({ effective }: GoingLive, today: string, policy: Policy): boolean =>
  daysBetween(today, effective) >= Math.max(1, policy.signOff.familiarisationDays);
