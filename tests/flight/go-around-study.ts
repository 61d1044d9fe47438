// The crew study of the reference (D6.1), as duties: its durations as it prints them, its moments (positive climb, 400 ft)
// as its flight prints them. The radio call is due after modes and heading in the first order, at gear up in the other one.
import type { Duty, Pilot } from '../../lib/flight/timeline.ts';

export function studyDuty(id: string, who: Pilot, takes: number, more: Partial<Duty>): Duty {
  const plain = {
    at: null,
    follows: [],
    lag: 0,
    speaks: null,
    order: 'in turn',
    breath: null,
    deadline: null,
  } as const;
  return { ...plain, id, who, does: id, takes, ...more };
}

export function goAroundStudy(order: 'check first' | 'check at the end'): readonly Duty[] {
  const first = order === 'check first';
  const reading = studyDuty('read modes', 'PM', 3, {
    speaks: 0,
    follows: [first ? 'go around, press' : 'press HEADING'],
    lag: first ? 1 : 0,
  });
  const radio = studyDuty('radio', 'PM', 6, { speaks: 0, at: first ? 18 : 12.5 });
  const rest = [
    studyDuty('positive climb', 'PM', 1, { at: 4, speaks: 0 }),
    studyDuty('order F18', 'PF', 1, { follows: ['positive climb'], speaks: 0 }),
    studyDuty('gear up', 'PF', 1, { follows: ['order F18'], speaks: 0 }),
    studyDuty('select F18', 'PM', 3, { follows: ['gear up'] }),
    studyDuty('gear lever', 'PM', 2, { follows: ['gear up'] }),
    studyDuty('call 400', 'PF', 1.2, { at: 13, speaks: 0 }),
    studyDuty('press HEADING', 'PM', 3, { follows: ['call 400'], speaks: 0 }),
    radio,
    studyDuty('altitude check', 'PM', 3, { follows: ['radio'], speaks: 0 }),
  ];
  return [
    studyDuty('go around, press', 'PF', 1.5, { at: 0, speaks: 0 }),
    studyDuty('pitch, levers', 'PF', 3, { follows: ['go around, press'] }),
    ...(first ? [reading, ...rest] : [...rest, reading]),
  ];
}
