import { type GoingLive, governanceOn } from '../../../lib/check/governance.ts';
import { liveBeforeReady } from '../../../lib/check/rules/live-before-ready.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { housePolicy } from '../../kit/world.ts';

const all = { have: 96, of: 96 };
const some = { have: 12, of: 96 };
const ready: GoingLive = {
  effective: '2026-11-26',
  signed: '2026-11-25',
  authority: { wanted: false, given: null },
  training: { wanted: true, done: all },
  acknowledged: all,
  briefed: false,
};
const facts = (goingLive: Partial<GoingLive>) => ({
  governance: governanceOn('2026-11-25', { goingLive: { ...ready, ...goingLive } }),
});
const days = (familiarisationDays: number) => ({
  policy: { ...housePolicy, signOff: { ...housePolicy.signOff, familiarisationDays } },
});
const at = ' title';

testRule(liveBeforeReady, {
  valid: [
    { why: 'all have read and trained', procedure: {}, facts: facts({}) },
    {
      why: 'time enough is left',
      procedure: {},
      facts: facts({ effective: '2026-12-25', training: { wanted: true, done: some }, acknowledged: some }),
    },
    { why: 'crews are briefed one by one', procedure: {}, facts: facts({ acknowledged: some, briefed: true }) },
    { why: 'no training wanted', procedure: {}, facts: facts({ training: { wanted: false, done: some } }) },
    {
      why: 'the authority answered before',
      procedure: {},
      facts: facts({ authority: { wanted: true, given: '2026-11-20' } }),
    },
    {
      why: 'three days are enough for this house',
      procedure: {},
      facts: { ...facts({ effective: '2026-11-28', acknowledged: some }), ...days(3) },
    },
  ],
  invalid: [
    {
      why: 'tomorrow, trained 12 of 96',
      procedure: {},
      facts: facts({ training: { wanted: true, done: some } }),
      findings: [{ at, message: 'untrained', says: 'trained 12 of 96', witness: { second: '2026-11-25' } }],
    },
    {
      why: 'tomorrow, and hardly anybody has read it',
      procedure: {},
      facts: facts({ acknowledged: some }),
      findings: [{ at, message: 'unread', says: '12 of 96', witness: { first: '2026-11-26' } }],
    },
    {
      why: 'before the signature',
      procedure: {},
      facts: facts({ effective: '2026-11-24' }),
      findings: [{ at, message: 'before-signature', witness: { kind: 'order' } }],
    },
    {
      why: 'no answer of the authority',
      procedure: {},
      facts: facts({ authority: { wanted: true, given: null } }),
      findings: [{ at, message: 'before-authority', says: 'has not answered', witness: { kind: 'order' } }],
    },
    {
      why: 'accepted later',
      procedure: {},
      facts: facts({ authority: { wanted: true, given: '2026-12-01' } }),
      findings: [{ at, message: 'before-authority', says: '2026-12-01', witness: { kind: 'order' } }],
    },
  ],
  missing: [
    { procedure: {}, facts: facts({ authority: null }), because: 'whether the authority must answer' },
    { procedure: {}, facts: facts({ training: null }), because: 'whether crews must be trained' },
    { procedure: {}, because: 'the dates of going live' },
  ],
});
