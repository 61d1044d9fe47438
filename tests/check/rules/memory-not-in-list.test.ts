import { memoryNotInList } from '../../../lib/check/rules/memory-not-in-list.ts';
import type { ProcedureParts } from '../../../lib/procedure/build.ts';
import { item, withLists } from '../../kit/lists.ts';
import { testRule } from '../../kit/rule-tester.ts';

const fire: ProcedureParts = {
  title: 'Engine fire',
  class: 'non-normal',
  steps: [
    { label: 'EF-01', object: 'thrust levers', value: 'idle', flags: ['memory'] },
    { label: 'EF-02', object: 'fuel lever', value: 'off', flags: ['memory'] },
    { label: 'EF-03', object: 'radio', value: 'mayday' },
  ],
};
const levers = item('thrust levers', 'idle', 'EF-01');
const fuel = item('fuel lever', 'off', 'EF-02');
const radio = item('radio', 'mayday', 'EF-03');
const list = (...items: readonly ReturnType<typeof item>[]) =>
  withLists({ title: 'Engine fire', method: 'read-and-do', items });

testRule(memoryNotInList, {
  valid: [
    { procedure: fire, facts: list(levers, fuel, radio) },
    { why: 'a list that is done first', procedure: fire, facts: list(levers, fuel) },
    { why: 'no memory items', procedure: { ...fire, steps: [] }, facts: list(radio) },
    { why: 'a manoeuvre has no list', procedure: { ...fire, title: 'Go-around', class: 'normal' } },
    {
      why: 'another case of letters, without the small words',
      procedure: fire,
      facts: list(item('Thrust levers', 'idle', 'EF-01'), item('The fuel lever', 'OFF', 'EF-02')),
    },
  ],
  invalid: [
    {
      why: 'begins at the second',
      procedure: fire,
      facts: list(fuel, radio),
      findings: [{ at: 'EF-01 flags', message: 'missing', says: 'EF-01', witness: { kind: 'absent' } }],
    },
    {
      why: 'turned round',
      procedure: fire,
      facts: list(fuel, levers),
      findings: [{ at: 'EF-02 flags', message: 'order', witness: { first: 'EF-02', second: 'EF-01' } }],
    },
    {
      why: 'something else first',
      procedure: fire,
      facts: list(radio, levers, fuel),
      findings: [
        { at: 'EF-01 flags', message: 'late', witness: { first: 'radio', second: 'EF-01' } },
        { at: 'EF-02 flags', message: 'late', witness: { second: 'EF-02' } },
      ],
    },
    {
      why: 'other words, by the link alone',
      procedure: { ...fire, title: 'Fire of an engine in flight' },
      facts: list(levers, item('fuel cock', 'shut', 'EF-02')),
      findings: [
        { at: 'EF-02 flags', message: 'words', says: 'fuel cock: shut', witness: { second: 'fuel cock: shut' } },
      ],
    },
  ],
  missing: [{ procedure: fire, facts: withLists(), because: 'no read-and-do list of the library' }],
});
