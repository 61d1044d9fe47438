import { expect, test } from 'vitest';
import { completeGate } from '../../lib/gate/complete.ts';

const names = {
  detents: ['F0', 'F6', 'F12', 'F18'],
  vertical: ['LIFT', 'LEVEL', 'ASCENT'],
  thrust: ['GOVERN', 'LEVEL'],
  armed: ['ALT', 'ROUTE'],
  steps: ['GA-01'],
  points: ['QOSTEL'],
  spoken: ['go around', 'gear up'],
};
/** Completed at the stroke. */
const at = (marked: string) => {
  const offset = marked.indexOf('|');
  return completeGate(marked.replace('|', ''), offset, names);
};
const texts = (marked: string): readonly string[] => at(marked).options.map((each) => each.text);

test.each([
  ['sp|', ['speed']],
  ['speed >= VM|', ['VMM', 'VMO', 'VMCA', 'VMCG']],
  ['speed >= VMM |', ['F0', 'F6', 'F12', 'F18', 'indicated', 'selected']],
  ['speed >= VMM F1|', ['F12', 'F18']],
  ['speed >= V1 a|', ['and']],
  ['radio hei|', ['height']],
  ['altitude >= selected al|', ['altitude']],
  ['height >= 400|', [' ft AAL', ' m AAL']],
  ['speed >= 210 |', ['kt']],
  ['flaps F18 |', ['indicated', 'selected']],
  ['gear |', ['up', 'down']],
  ['vertical = L|', ['LIFT', 'LEVEL']],
  ['armed |', ['ALT', 'ROUTE']],
  ['after |', ['GA-01']],
  ['distance to |', ['QOSTEL']],
  ['heard "g|', ['"go around"', '"gear up"']],
  ['hieght > 3 and fla|', ['flaps']],
  ['speed >= V1 and (flaps F0 indicated or ge|)', ['gear']],
])('%s', (marked, expected) => {
  expect(texts(marked)).toEqual(expected);
});

test('a mode that is also a word of the notation comes in quotes where that matters', () => {
  expect(texts('thrust = |').slice(0, 2)).toEqual(['GOVERN', '"LEVEL"']);
  expect(texts('vertical = |')).toContain('LEVEL');
});

test('beside a speed speeds are offered, beside an altitude altitudes', () => {
  expect(texts('speed >= |')).toContain('VREF');
  expect(texts('speed >= |')).not.toContain('selected altitude');
  expect(texts('altitude >= |')).toContain('selected altitude');
  expect(texts('altitude >= |')).not.toContain('VREF');
});

test('the word under the caret is replaced as a whole', () => {
  const { from, to } = at('speed >= VM|M F12');
  expect([from, to]).toEqual([9, 12]);
});

test('at the start everything that may begin a condition is offered', () => {
  expect(texts('|')).toEqual(expect.arrayContaining(['then', 'flaps', 'speed', 'heard', 'when cleared', 'any of (']));
});
