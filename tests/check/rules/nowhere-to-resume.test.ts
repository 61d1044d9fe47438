import { nowhereToResume } from '../../../lib/check/rules/nowhere-to-resume.ts';
import type { Checklist } from '../../../lib/library/library.ts';
import { testRule } from '../../kit/rule-tester.ts';
import { seedLibrary } from '../../kit/seed.ts';

const pumps = { cue: 'then', who: 'PM', verb: 'set', object: 'fuel pumps', flags: ['interruptible'] } as const;
const plain = { cue: 'then', who: 'PM', verb: 'set', object: 'beacon' } as const;
const item = (challenge: string, response = 'on') => ({ challenge, response, by: 'PM', steps: [] }) as const;
const withList = (...items: Checklist['items']) => {
  const list: Checklist = {
    id: 'before-start',
    title: 'Before start',
    calledBy: 'PF',
    readBy: 'PM',
    trigger: 'doors closed',
    method: 'do-then-verify',
    items,
    complete: 'complete',
  };
  return { library: { ...seedLibrary(), checklists: [list] } };
};
const reads = { cue: 'then', who: 'PM', verb: 'read', object: 'before start checklist' } as const;

testRule(nowhereToResume, {
  valid: [
    { why: 'one step is its own point', procedure: { steps: [plain, pumps, plain] } },
    {
      why: 'a hold point behind the stretch',
      procedure: { steps: [pumps, pumps, { ...plain, note: 'resume at the pumps', flags: ['hold'] }] },
    },
    { why: 'two single steps apart', procedure: { steps: [pumps, plain, pumps] } },
    {
      why: 'a list with a hold line',
      procedure: { steps: [reads] },
      facts: withList(
        item('Doors'),
        item('HOLD', 'resume at item 3; restart if in doubt'),
        item('Push-back', 'cleared'),
      ),
    },
  ],
  invalid: [
    {
      why: 'three in a row',
      procedure: { steps: [plain, pumps, pumps, pumps] },
      findings: [{ at: 's2 flags', message: 'no-hold', says: '3 steps', witness: { first: 's2', second: 's4' } }],
    },
    {
      why: 'a hold point that does not say where to resume',
      procedure: { steps: [pumps, { ...pumps, flags: ['interruptible', 'hold'] }] },
      findings: [{ at: 's2 note', message: 'no-resume', witness: { kind: 'absent' } }],
    },
    {
      why: 'a list that the tug splits',
      procedure: { steps: [reads] },
      facts: withList(item('Doors'), item('Push-back', 'cleared'), item('Pumps')),
      findings: [{ at: 's1 object', message: 'split-list', says: 'item 2', witness: { first: '1', second: '2' } }],
    },
    {
      why: 'a hold line without a word about resuming',
      procedure: { steps: [reads] },
      facts: withList(item('Doors'), item('HOLD', 'until cleared'), item('Push-back', 'cleared')),
      findings: [{ at: 's1 object', message: 'list-no-resume', witness: { kind: 'absent' } }],
    },
  ],
});
