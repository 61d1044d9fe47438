import { type Device, governanceOn } from '../../../lib/check/governance.ts';
import { oldCopyStillShown } from '../../../lib/check/rules/old-copy-still-shown.ts';
import { testRule } from '../../kit/rule-tester.ts';

const current = { issue: 9, hash: 'b' };
const device: Device = {
  name: 'tablet 4',
  tail: 'Q-SKA',
  shows: current,
  asCurrent: true,
  synchronised: '2026-11-25',
  airborne: false,
};
const old = { shows: { issue: 8, hash: 'a' }, synchronised: '2026-11-22' };
const facts = (...list: Partial<Device>[]) => ({
  governance: governanceOn('2026-11-25', { devices: { current, list: list.map((one) => ({ ...device, ...one })) } }),
});
const at = ' title';

testRule(oldCopyStillShown, {
  valid: [
    { why: 'no device', procedure: {}, facts: facts() },
    { why: 'the one in force', procedure: {}, facts: facts({}) },
    { why: 'an old one, marked as not current', procedure: {}, facts: facts({ ...old, asCurrent: false }) },
    { why: 'in the air nothing is exchanged', procedure: {}, facts: facts({ ...old, airborne: true }) },
  ],
  invalid: [
    {
      why: 'last synchronised three days ago',
      procedure: {},
      facts: facts(old),
      findings: [{ at, message: 'old', says: 'shows issue 8', witness: { first: 'a', second: 'b' } }],
    },
    {
      why: 'one of two',
      procedure: {},
      facts: facts({}, { ...old, name: 'tablet 5' }),
      findings: [{ at, message: 'old', says: 'tablet 5', witness: { kind: 'order' } }],
    },
    {
      why: 'the right number over other words, even in the air',
      procedure: {},
      facts: facts({ shows: { issue: 9, hash: 'x' }, airborne: true }),
      findings: [{ at, message: 'other', witness: { first: 'x' } }],
    },
  ],
  missing: [{ procedure: {}, because: 'the state of the devices was not given' }],
});
