import { NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder } from '../witness.ts';

export const signedSomethingElse = defineRule({
  id: 'signed-something-else',
  number: 112,
  severity: 'STOP',
  kind: 'T',
  stage: 'publication',
  phases: 'all',
  title: 'Signed something else',
  says: 'What is published is, byte for byte, what was signed; the versions of sheet, check set and policy are recorded with it; and the issue got its number in the act of signing.',
  why: 'A mistake in typing that is mended after the signature is a text that nobody has approved.',
  source: { text: 'FAA AC 120-78B, electronic signatures', seen: false },
  needs: ['governance'],
  reads: [],
  messages: {
    'other-content': 'What would be published is not what was signed: crews would fly a text that nobody approved.',
    'not-recorded': 'The signature does not record the version of the {what}: nobody can ask the same question again.',
    'no-number': 'The issue has no number from the act of signing: nobody can say which text is in force.',
  },
  examples: {
    bad: '{governance: {signing: {drafters: [reth], recommendedBy: maddock, signedBy: harrow, waivers: [], signedHash: 1f0a, publishedHash: 77c2, recorded: {sheet: A, checkSet: c, policy: "1"}, issue: 4}}}',
    good: '{governance: {signing: {drafters: [reth], recommendedBy: maddock, signedBy: harrow, waivers: [], signedHash: 1f0a, publishedHash: 1f0a, recorded: {sheet: A, checkSet: c, policy: "1"}, issue: 4}}}',
  },
  run({ governance: { signing }, unasked }, report) {
    if (signing === null) return unasked(NOT_KNOWN.signing, WHOLE);
    const { signedHash, publishedHash, recorded, issue } = signing;
    if (signedHash !== publishedHash) {
      const witness = inOrder(signedHash, publishedHash, `signed ${signedHash}, to be published ${publishedHash}`);
      report({ at: WHOLE, message: 'other-content', witness, read: [signedHash, publishedHash] });
    }
    const versions = { sheet: 'sheet', checkSet: 'check set', policy: 'policy' } as const;
    for (const key of ['sheet', 'checkSet', 'policy'] as const) {
      if (recorded[key] !== null) continue;
      const data = { what: versions[key] };
      report({ at: WHOLE, message: 'not-recorded', data, witness: absent(versions[key]), cause: `recorded ${key}` });
    }
    if (issue === null) report({ at: WHOLE, message: 'no-number', witness: absent('issue number') });
  },
});
