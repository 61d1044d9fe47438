import { formatNumber } from '../../units/format.ts';
import { type Case, caseOf, type Fault, faultsOf } from '../branch-cases.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const REST = /^(else|otherwise|in all other cases)$/i;

function place({ from, to }: Fault, unit: string): string {
  const words = (value: number): string => `${formatNumber(value, Number.isInteger(value) ? 0 : 1)} ${unit}`.trim();
  if (from === to) return `at exactly ${words(from)}`;
  if (from === -Infinity) return `below ${words(to)}`;
  return to === Infinity ? `above ${words(from)}` : `between ${words(from)} and ${words(to)}`;
}

export const branchGapOrOverlap = defineRule({
  id: 'branch-gap-or-overlap',
  number: 12,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Branch with a gap or an overlap',
  says: 'The conditions of a branch cover all cases, exclude one another, and say where the boundary itself belongs. One condition alone leaves the others on the page; "otherwise" covers the rest.',
  why: 'Conditional items are misread under stress: a case that nobody wrote is flown by guess.',
  source: { text: 'NASA TM-2014-218382 and lecture outline on checklist design', seen: true },
  needs: [],
  reads: ['branch'],
  messages: {
    gap: 'No way is given {place}: there the crew has to guess.',
    overlap: 'Two ways are given {place}: which one holds is left to the crew.',
    twice: '{word} leads both to {first} and to {second}.',
  },
  examples: {
    bad: '[{cue: then, who: PF, verb: decide, object: flap, branch: [{when: weight > 60 t, to: list A}, {when: weight < 60 t, to: list B}]}]',
    good: '[{cue: then, who: PF, verb: decide, object: flap, branch: [{when: weight >= 60 t, to: list A}, {when: weight < 60 t, to: list B}]}]',
  },
  run({ steps, gate, unasked }, report) {
    for (const step of steps) {
      if (step.branch.length < 2) continue;
      const at = { step: step.id as string, field: 'branch' };
      const witness = wordsOf('branch', step.branch.map((way) => way.when).join(' | '));
      const gates = step.branch.map((way) => (REST.test(way.when.trim()) ? null : gate(way.when).gate));
      const rest = step.branch.some((way) => REST.test(way.when.trim()));
      const leads = new Map<string, string>();
      for (const [index, one] of gates.entries()) {
        if (one?.kind !== 'mode') continue;
        const { to } = step.branch[index]!;
        for (const word of one.words) {
          const other = leads.get(`${one.axis} ${word}`);
          if (other !== undefined && other !== to)
            report({ at, message: 'twice', data: { word, first: other, second: to }, witness });
          leads.set(`${one.axis} ${word}`, to);
        }
      }
      const cases = gates.map(caseOf).filter((one): one is Case => one !== null);
      const measured = cases.length >= 2 && cases.every((one) => one.scale === cases[0]!.scale);
      if (!measured) {
        const modes = gates.every((one) => one?.kind === 'mode');
        if (!modes && !rest)
          unasked('conditions in words can not be compared: whether they cover all cases is for the writer', at);
        continue;
      }
      const unit = cases[0]!.scale.split(' ').slice(2).join(' ').trim();
      for (const fault of faultsOf(cases)) {
        if (fault.kind === 'gap' && rest) continue;
        report({ at, message: fault.kind, data: { place: place(fault, unit) }, witness });
      }
    }
  },
});
