import { expect, it } from 'vitest';
import { procedureWith } from '../../lib/procedure/build.ts';
import { branchOf, findStep, positionWords, stepsNamedIn } from '../../lib/procedure/locate.ts';

const procedure = procedureWith({
  steps: [{ id: 'a', label: 'GA-01' }, { id: 'b' }],
  branches: [{ title: 'Low level-off', steps: [{ id: 'c' }] }],
});

it('finds a step by permanent id and by label, never by an empty name', () => {
  expect(findStep(procedure, 'GA-01')?.id).toBe('a');
  expect(findStep(procedure, 'c')?.id).toBe('c');
  expect(findStep(procedure, '')).toBeNull();
  expect(findStep(procedure, 'GA-0')).toBeNull();
});

it('finds labels that stand as whole words', () => {
  expect(stepsNamedIn(procedure, 'GA-01 if low, else GA-010').map((step) => step.id)).toEqual(['a']);
});

it('says where a step stands', () => {
  expect(['a', 'b', 'c', '', 'zz'].map((id) => positionWords(procedure, id))).toEqual([
    'GA-01',
    'step 2',
    'step 1 of "Low level-off"',
    'the procedure',
    'a step that is gone',
  ]);
});

it('knows the branch of a step', () => {
  expect(branchOf(procedure, procedure.branches[0]!.steps[0]!)?.title).toBe('Low level-off');
  expect(branchOf(procedure, procedure.steps[0]!)).toBeNull();
});
