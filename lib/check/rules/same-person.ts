import { NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

export const samePerson = defineRule({
  id: 'same-person',
  number: 111,
  severity: 'STOP',
  kind: 'T',
  stage: 'publication',
  phases: 'all',
  title: 'Same person',
  says: 'Drafter, recommending standards captain and signing approver are different people (three, or drafter and signer where the policy of a small operator says two). A STOP is waived by a standards captain who neither drafted nor signs, with reason and expiry, and shown to the signer.',
  why: 'Who wrote a text sees what was meant; only another one sees what is written.',
  source: { text: 'separation of duties in document control, in general', seen: false },
  needs: ['governance', 'policy'],
  reads: [],
  messages: {
    'drafter-signs': 'Who signs has drafted: nobody else has looked at the text before crews fly it.',
    'drafter-recommends': 'Who recommends has drafted: the review has seen what was meant, not what is written.',
    'recommender-signs': 'Who signs has recommended: two looks were one.',
    unreviewed: 'Nobody has recommended the text: the approver signs what no standards captain has read.',
    'own-waiver': 'The STOP of {check} is waived by somebody who drafted or signs: nobody waives for themselves.',
    'no-captain': 'The STOP of {check} is waived by somebody who is no standards captain.',
    bare: 'The waiver of {check} has no {lacks}: it would stand for ever, or for nothing.',
    over: 'The waiver of {check} ended on {until}: the STOP holds again.',
    hidden: 'The waiver of {check} was not shown to the signer: the signature does not cover it.',
  },
  examples: {
    bad: '{governance: {signing: {drafters: [reth], recommendedBy: maddock, signedBy: harrow, waivers: [{check: flap-above-limit, by: reth, standardsCaptain: false, reason: trial, until: null, shownToSigner: true}], signedHash: a, publishedHash: a, recorded: {sheet: A, checkSet: c, policy: "1"}, issue: 4}}}',
    good: '{governance: {signing: {drafters: [reth], recommendedBy: maddock, signedBy: harrow, waivers: [{check: flap-above-limit, by: maddock, standardsCaptain: true, reason: placard until the new gauge is in, until: 2026-12-31, shownToSigner: true}], signedHash: a, publishedHash: a, recorded: {sheet: A, checkSet: c, policy: "1"}, issue: 4}}}',
  },
  run({ governance, policy, unasked }, report) {
    const { signing, today } = governance;
    if (signing === null) return unasked(NOT_KNOWN.signing, WHOLE);
    const { drafters, recommendedBy, signedBy, waivers } = signing;
    const at = WHOLE;
    const people = `drafted by ${drafters.join(', ')}; recommended by ${recommendedBy ?? 'nobody'}; signed by ${signedBy}`;
    const tell = (message: 'drafter-signs' | 'drafter-recommends' | 'recommender-signs' | 'unreviewed') =>
      report({ at, message, witness: inOrder(signedBy, signedBy, people), read: [people, policy.signOff.people] });
    if (drafters.includes(signedBy)) tell('drafter-signs');
    if (recommendedBy === null) tell('unreviewed');
    else if (policy.signOff.people > 2) {
      if (drafters.includes(recommendedBy)) tell('drafter-recommends');
      if (recommendedBy === signedBy) tell('recommender-signs');
    }
    for (const { check, by, standardsCaptain, reason, until, shownToSigner } of waivers) {
      const lacks = [...(reason.trim() === '' ? ['reason'] : []), ...(until === null ? ['expiry'] : [])].join(
        ' and no ',
      );
      const witness = inOrder(by, signedBy, `waived by ${by} until ${until ?? 'no day'}: ${reason || 'no reason'}`);
      const tellOf = (message: 'own-waiver' | 'no-captain' | 'bare' | 'over' | 'hidden', data = {}) =>
        report({
          at,
          message,
          data: { check, ...data },
          witness,
          cause: `waiver ${check} ${message}`,
          read: [by, check],
        });
      if (drafters.includes(by) || by === signedBy) tellOf('own-waiver');
      else if (!standardsCaptain) tellOf('no-captain');
      if (lacks !== '') tellOf('bare', { lacks });
      if (until !== null && until < today) tellOf('over', { until });
      if (!shownToSigner) tellOf('hidden');
    }
  },
});
