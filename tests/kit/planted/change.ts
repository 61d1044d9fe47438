// Defects of the record: the change, its source, its signatures, and what crews hold. The text stays as it is, but for what a
// change is about.
import { type Governance, governanceOn } from '../../../lib/check/governance.ts';
import type { Procedure, Step } from '../../../lib/procedure/procedure.ts';
import { type Base, changed, type Mutant, type Plants } from './plant.ts';

const TODAY = '2026-11-25';
type Known = Partial<Omit<Governance, 'today'>>;
const recorded = (base: Base, says: string, known: Known, procedure: Procedure = base.procedure): Mutant => ({
  says,
  procedure,
  facts: { governance: governanceOn(TODAY, known) },
});
const firstOf = ({ procedure }: Base): Step =>
  procedure.steps.find(({ flags }) => flags.includes('critical')) ?? procedure.steps[0]!;

const SIGNED = {
  drafters: ['p1'],
  recommendedBy: 'p2',
  signedBy: 'p3',
  waivers: [],
  signedHash: '1f0a',
  publishedHash: '1f0a',
  recorded: { sheet: 'A', checkSet: 'c1', policy: '1' },
  issue: 4,
} as const;
const READY = {
  effective: '2026-12-25',
  signed: TODAY,
  authority: { wanted: false, given: null },
  training: { wanted: false, done: { have: 96, of: 96 } },
  acknowledged: { have: 96, of: 96 },
  briefed: false,
} as const;

/** The issue before, from which the text of today differs in one value. */
function since(base: Base, marks: NonNullable<Governance['change']>['marks'], says: string): Mutant {
  const step = base.procedure.steps.find(({ value }) => value !== '') ?? firstOf(base);
  const now = changed(base.procedure, step, { value: `${step.value}, changed` });
  return recorded(base, says, { change: { base: { issue: 3, procedure: base.procedure }, marks } }, now);
}
const revision = (step: string, expires: string | null) => ({
  name: '9',
  step,
  parentIssue: 8,
  expires,
  validatedFor: 8,
  fate: null,
});
const answer = {
  kind: 'answer',
  check: 'elastic-words',
  at: { step: '', field: 'value' },
  reason: 'the table gives the figure',
  until: null,
  read: 'x',
  readNow: 'x',
} as const;
const device = {
  name: 'tablet 4',
  tail: 'Q-SKA',
  shows: { issue: 8, hash: 'a' },
  asCurrent: true,
  synchronised: '2026-11-22',
  airborne: false,
};

export const CHANGE: Plants = {
  'differs-from-manufacturer': (base) => {
    const found = (what: 'order' | 'value' | 'omitted') => ({
      step: firstOf(base).id as string,
      what,
      source: 'type data',
      theirs: 'the other way round',
      limit: true,
    });
    return (['order', 'omitted'] as const).map((what) =>
      recorded(base, `${what} unlike the source`, { differences: { found: [found(what)], register: [] } }),
    );
  },
  'stale-source': (base) => {
    const use = (now: 'changed' | 'not compared') => ({
      step: firstOf(base).id as string,
      value: 'a limit',
      now,
      newValue: '190 kt',
    });
    return (['changed', 'not compared'] as const).map((now) =>
      recorded(base, `the cited value is ${now}`, {
        sources: [
          { id: 's', title: 'type data', cited: 'A', newer: { revision: 'B', temporary: false }, uses: [use(now)] },
        ],
      }),
    );
  },
  'changed-without-mark': (base) => [since(base, [], 'changed without a mark')],
  'reason-too-thin': (base) =>
    ['amended', 'update'].map((reason) =>
      since(base, [{ step: '', field: '', reason, source: 'type data', risk: '' }], `marked "${reason}"`),
    ),
  'same-person': (base) => [
    recorded(base, 'the drafter signs', { signing: { ...SIGNED, signedBy: 'p1' } }),
    recorded(base, 'the drafter recommends', { signing: { ...SIGNED, recommendedBy: 'p1' } }),
  ],
  'signed-something-else': (base) => [
    recorded(base, 'another hash', { signing: { ...SIGNED, publishedHash: '77c2' } }),
    recorded(base, 'no policy recorded', { signing: { ...SIGNED, recorded: { ...SIGNED.recorded, policy: null } } }),
  ],
  'live-before-ready': (base) => [
    recorded(base, 'effective before it is signed', { goingLive: { ...READY, effective: '2026-11-20' } }),
    recorded(base, '8 of 96 have not read it', {
      goingLive: { ...READY, effective: '2026-11-26', acknowledged: { have: 88, of: 96 } },
    }),
  ],
  'tr-expired-or-clashing': (base) => {
    const { label } = firstOf(base);
    return [
      recorded(base, 'expired', { revisions: { issue: 8, list: [revision(label, '2026-10-31')] } }),
      recorded(base, 'without an end', { revisions: { issue: 8, list: [revision(label, null)] } }),
    ];
  },
  'tr-lost': (base) => [
    recorded(base, 'nothing said of it', {
      revisions: { issue: 8, list: [revision(firstOf(base).label, '2026-12-31')] },
    }),
  ],
  'old-copy-still-shown': (base) => [
    recorded(base, 'issue 8 as current', { devices: { current: { issue: 9, hash: 'b' }, list: [device] } }),
    recorded(base, 'another content under the same number', {
      devices: { current: { issue: 8, hash: 'b' }, list: [device] },
    }),
  ],
  'waived-forever': (base) => [
    recorded(base, 'answered five years ago', {
      answers: [{ ...answer, at: { step: firstOf(base).id, field: 'value' }, on: '2021-03-01' }],
    }),
    recorded(base, 'answered to something else', {
      answers: [{ ...answer, at: { step: firstOf(base).id, field: 'value' }, on: '2026-10-01', readNow: 'y' }],
    }),
  ],
  'feedback-unanswered': (base) => [
    recorded(base, 'two months old', { feedback: [{ step: firstOf(base).label, on: '2026-09-01', answered: false }] }),
  ],
};
