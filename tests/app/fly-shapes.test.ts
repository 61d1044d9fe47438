import { describe, expect, test } from 'vitest';
import { differences, sayDifference } from '../../app/(house)/fly/_fly/against-recording.ts';
import { readingAt, sayReading, stepNames, stopFrom, stops } from '../../app/(house)/fly/_fly/events.ts';
import { conditionsOf, firstMeasure, flyOne, type Ground } from '../../app/(house)/fly/_fly/fly-one.ts';
import { heightShape } from '../../app/(house)/fly/_fly/height-shape.ts';
import { fitted, modeSegments, transitLane, workBars } from '../../app/(house)/fly/_fly/lanes-shape.ts';
import { alongTrack, planFrame } from '../../app/(house)/fly/_fly/plan-shape.ts';
import { FIELDS, planned, wayOf } from '../../app/(house)/fly/_fly/plan-ways.ts';
import { drawnRows, momentAtDistance, rowAt, valueAt } from '../../app/(house)/fly/_fly/rows.ts';
import { outside, speedShape } from '../../app/(house)/fly/_fly/speed-shape.ts';
import { pathOf, subjectOf } from '../../app/(house)/fly/_fly/subject.ts';
import { around, axis, LEFT, RIGHT, stretchAround, timeAxis } from '../../app/(house)/fly/_fly/time-axis.ts';
import { readRecording } from '../../lib/flight/recording.ts';
import { defaultPolicy } from '../../lib/policy/default.ts';
import { seedLibrary, seedProcedure } from '../kit/seed.ts';
import { tn182 } from '../kit/sheets.ts';

const procedure = seedProcedure('go-around');
const ground: Ground = { procedure, against: null, sheet: tn182(), policy: defaultPolicy, library: seedLibrary() };
const flown = flyOne(ground, procedure, { weight: 58_000 }, []);
const { trace, crew } = flown;
const x = timeAxis(0, trace.end.time, 860);

describe('axes', () => {
  test('time runs from edge to edge, and back', () => {
    expect(x.place(0)).toBe(LEFT);
    expect(x.place(trace.end.time)).toBeCloseTo(860 - RIGHT, 1);
    expect(x.value(x.place(30))).toBeCloseTo(30, 0);
    expect(x.value(-500)).toBe(0);
    expect(x.value(9_999)).toBe(trace.end.time);
  });
  test('an empty range still has a length, and figures are set as the trade sets them', () => {
    expect(axis([5, 5], [0, 100], 3).to).toBe(6);
    expect(axis([0, 3_000], [0, 100], 3).ticks.map(({ says }) => says)).toContain('2\u202f000');
    expect(axis([-20, 0], [0, 100], 3).ticks[0]!.says).toBe('−20');
  });
  test('rounded outwards; nothing finite gives the least', () => {
    expect(around([121, 187], 10, 60)).toEqual([110, 190]);
    expect(around([Number.NaN, Number.POSITIVE_INFINITY], 10, 60)).toEqual([0, 60]);
  });
  test('a stretch follows the cursor out of itself and stays otherwise', () => {
    expect(stretchAround(20, 30, 130, 0)).toBe(0);
    expect(stretchAround(40, 30, 130, 0)).toBe(32.5);
    expect(stretchAround(129, 30, 130, 0)).toBe(100);
    expect(stretchAround(40, null, 130, 32)).toBe(0);
    expect(stretchAround(40, 200, 130, 32)).toBe(0);
  });
});

describe('rows', () => {
  test('thinned rows keep the ends and every peak', () => {
    const rows = drawnRows(trace.samples, ['speed'], 40);
    expect(rows.length).toBeLessThanOrEqual(44);
    expect(rows[0]).toBe(0);
    expect(rows.at(-1)).toBe(trace.samples.time.length - 1);
    const fastest = (of: readonly number[]) => Math.max(...of.map((row) => trace.samples.speed[row]!));
    expect(fastest(rows)).toBe(Math.max(...trace.samples.speed));
    expect(drawnRows(trace.samples, ['speed'], 100_000)).toHaveLength(trace.samples.time.length);
  });
  test('a moment lies between two rows', () => {
    const row = rowAt(trace.samples, 20.4);
    expect(trace.samples.time[row]!).toBeLessThanOrEqual(20.4);
    expect(trace.samples.time[row + 1]!).toBeGreaterThan(20.4);
    const speed = valueAt(trace.samples, 'speed', 20.4)!;
    const [a, b] = [trace.samples.speed[row]!, trace.samples.speed[row + 1]!];
    expect(speed).toBeGreaterThanOrEqual(Math.min(a, b));
    expect(speed).toBeLessThanOrEqual(Math.max(a, b));
    expect(valueAt(trace.samples, 'speed', 1e9)).toBe(trace.samples.speed.at(-1));
  });
  test('distance gives the moment back', () => {
    const miles = valueAt(trace.samples, 'distance', 33.3)!;
    expect(momentAtDistance(trace, miles)).toBeCloseTo(33.3, 6);
  });
});

describe('charts', () => {
  test('speed: one path each, inside the chart; the other and the recording only where there are any', () => {
    const alone = speedShape(trace, x, null, null, 0);
    for (const path of [alone.band, alone.ceiling, alone.floor, alone.vmm, alone.speed]) {
      expect(path).toMatch(/^M/);
      expect(path).not.toContain('NaN');
    }
    expect([alone.other, alone.recorded]).toEqual(['', '']);
    const recording = readRecording('time,speed\n0,130\n10,160\n9999,170');
    const both = speedShape(trace, x, trace, recording, 2);
    expect(both.other).toBe(both.speed);
    expect(both.recorded.match(/[ML]/g)).toHaveLength(2);
    expect(both.recorded.startsWith(`M${x.place(2)},`)).toBe(true);
  });
  test('left band: flown too fast is said with its time', () => {
    expect(outside(trace)).toEqual([]);
    const samples = {
      ...trace.samples,
      ceiling: trace.samples.ceiling.map((limit, row) => (row > 4 && row < 8 ? 100 : limit)),
    };
    const [found, ...more] = outside({ ...trace, samples });
    expect(more).toEqual([]);
    expect(found).toEqual({ from: trace.samples.time[5], to: trace.samples.time[7], side: 'above' });
  });
  test('height: gates lie on the path, names do not cover one another', () => {
    const shape = heightShape(trace, 860, null, null, 0, stepNames(procedure));
    expect(shape.gates.length).toBeGreaterThan(6);
    const named = shape.gates.filter(({ name }) => name !== '');
    for (const [place, gate] of named.entries())
      if (place > 0) expect(gate.x - named[place - 1]!.x).toBeGreaterThanOrEqual(46);
    expect(named.some(({ name }) => name.startsWith('GA-09'))).toBe(true);
    const low = heightShape(trace, 860, null, readRecording('time,altitude\n0,700\n5,600'), 0, () => '');
    expect(low.recorded).toMatch(/^M.*L/);
  });
});

describe('lanes', () => {
  test('a word stands until the next one; who changed it is known', () => {
    const vertical = modeSegments(trace, 'vertical');
    expect(vertical.map(({ word }) => word)).toEqual(['LIFT', 'ASCENT', 'CAPTURE', 'LEVEL']);
    expect(vertical.map(({ by }) => by).slice(1)).toEqual(['crew', 'automatic', 'automatic']);
    for (const [place, one] of vertical.entries()) expect(one.to).toBe(vertical[place + 1]?.from ?? trace.end.time);
  });
  test('movements last as long as they last, and what is indicated stands between them', () => {
    const { bars, held } = transitLane(trace, 'flap');
    expect(bars[0]).toMatchObject({ says: 'F35 → F18', from: 6, to: 18, arrived: true });
    expect(held[0]).toEqual({ word: 'F35', from: 0, to: 6 });
    expect(held.at(-1)).toMatchObject({ word: 'F0', to: trace.end.time });
    expect(transitLane(trace, 'gear').held.map(({ word }) => word)).toEqual(['down', 'UP'.toLowerCase()]);
  });
  test('no pilot does two things at once, and an interruption has a bar of its own', () => {
    for (const who of ['PF', 'PM'] as const) {
      const bars = workBars(crew, who);
      expect(bars.length).toBeGreaterThan(5);
      for (const [place, bar] of bars.entries())
        if (place > 0) expect(bar.from).toBeGreaterThanOrEqual(bars[place - 1]!.to - 1e-9);
    }
    const called = flyOne(ground, procedure, { weight: 58_000 }, [{ id: 'i1', kind: 'radio', at: 10 }]);
    expect(workBars(called.crew, 'voice').filter(({ interrupts }) => interrupts)).toHaveLength(1);
    expect(called.trace).toEqual(trace);
  });
  test('a text is cut to its bar, and left out where nothing of it would fit', () => {
    expect(fitted('CAPTURE', 100)).toBe('CAPTURE');
    expect(fitted('CAPTURE', 42)).toBe('CAPT…');
    expect(fitted('CAPTURE', 20)).toBe('');
  });
});

describe('the cursor', () => {
  test('goes from event to event and stays inside the flight', () => {
    const all = stops(trace);
    expect(all[0]).toBe(0);
    expect(all.at(-1)).toBe(trace.end.time);
    expect(stopFrom(trace, 0, 1)).toBe(all[1]);
    expect(stopFrom(trace, all[3]!, -1)).toBe(all[2]);
    expect(stopFrom(trace, trace.end.time, 1)).toBe(trace.end.time);
    expect(stopFrom(trace, 0, -1)).toBe(0);
  });
  test('reads rounded figures, the band, the modes and who is busy', () => {
    const reading = readingAt(trace, crew, 12)!;
    expect(reading.time).toBe('12 s');
    expect(reading.height).toMatch(/^\d+0 ft AAL$/);
    expect(reading.speed).toMatch(/^\d+ kt$/);
    expect(reading.band).toMatch(/^band \d+ to \d+ kt, \d+ kt (to its limit|above its floor)$/);
    expect(reading.flap).toBe('F35 → F18');
    expect(reading.gear).toBe('in transit');
    expect(reading.modes).toBe('GOAROUND · STRAIGHT · LIFT, armed ALT');
    expect(sayReading(reading)).toContain('gear in transit');
    expect(sayReading(null)).toBe('nothing was flown');
  });
});

describe('what was recorded', () => {
  test('is compared where both are, and said with sign and time', () => {
    const at = (time: number, more: number) => `${time},${valueAt(trace.samples, 'speed', time)! + more}`;
    const read = readRecording(`time,speed\n${at(0, 0)}\n${at(10, 7.4)}\n${at(20, -3)}\n5000,100`);
    const [speed, ...none] = differences(trace, read, 0);
    expect(none).toEqual([]);
    expect(speed).toMatchObject({ what: 'speed', at: 10, of: 3 });
    expect(sayDifference(speed!)).toBe('recorded at most 7 kt faster than computed, at 10 s (3 lines compared)');
    expect(sayDifference({ ...speed!, by: 0.2, of: 1 })).toBe('recorded speed the same within 1 kt (1 line compared)');
    expect(differences(trace, read, 9_000)).toEqual([]);
  });
});

describe('from above', () => {
  test('a mile is as long along as across, and the course runs to the right', () => {
    const frame = planFrame(
      [
        { along: 0, right: 0 },
        { along: 60, right: -20 },
      ],
      860,
    );
    const along = frame.x.place(10) - frame.x.place(0);
    const across = frame.y.place(10) - frame.y.place(0);
    expect(Math.abs(along - across)).toBeLessThan(along * 0.02);
    expect(frame.path([])).toBe('');
    expect(
      frame.path([
        { along: 0, right: 0 },
        { along: 1, right: 1 },
      ]),
    ).toMatch(/^M[\d.]+ [\d.]+L/);
    const turned = alongTrack([3, 1], [0, 0], 90);
    expect(turned[0]!.along).toBeCloseTo(3, 9);
    expect(turned[0]!.right).toBeCloseTo(0, 9);
  });
  test('the words of the procedure choose the view; figures outside are said', () => {
    expect(wayOf(seedProcedure('weather-deviation'))).toBe('around');
    expect(wayOf(seedProcedure('direct-to'))).toBe('direct');
    expect(wayOf(procedure)).toBe('flown');
    const start = (way: 'around' | 'direct') => Object.fromEntries(FIELDS[way].map((one) => [one.name, one.start]));
    const around = planned('around', start('around'), 'left');
    expect(around.refused).toBe('');
    expect(around.says[0]).toMatch(/^Begin the turn \d+\.\d NM before the cell at the latest/);
    expect(Math.min(...around.names.map(({ right }) => right))).toBeLessThan(-20);
    expect(planned('around', { ...start('around'), leave: Number.NaN }, 'left').refused).toContain('Leave by');
    expect(planned('around', { ...start('around'), left: 9 }, 'left').refused).toContain('right of the right edge');
    const direct = planned('direct', start('direct'), 'left');
    expect(direct.says[0]).toMatch(/^Turn right by \d+°/);
    expect(planned('direct', { ...start('direct'), ahead: 0.5, right: 0.5 }, 'left').refused).toContain(
      'inside the turn',
    );
  });
});

test('what is asked first, the card of the place, and a condition outside the sheet', () => {
  expect(firstMeasure(procedure, ground.sheet)).toBe('limit');
  expect(firstMeasure(seedProcedure('instrument-approach'), ground.sheet)).toBe('stable');
  expect(conditionsOf(ground, procedure, { weight: 58_000, wind: 20 })).toMatchObject({ weight: 58_000, wind: 20 });
  const heavy = flyOne(ground, procedure, { weight: 90_000 }, []);
  expect(heavy.trace.end).toMatchObject({ reason: 'refused' });
  expect(readingAt(heavy.trace, heavy.crew, 0)).toBe(null);
  expect(speedShape(heavy.trace, timeAxis(0, 0, 860), null, null, 0).speed).toBe('');
});

test('an address names a draft, a candidate, an issue, or nothing', () => {
  expect(subjectOf({ draft: 'dr_a' })).toEqual({ draft: 'dr_a' });
  expect(subjectOf({ candidate: 'ca_a' })).toEqual({ candidate: 'ca_a' });
  expect(subjectOf({ procedure: 'pr_a', issue: '3' })).toEqual({ procedure: 'pr_a', issue: 3 });
  for (const query of [
    {},
    { procedure: 'pr_a' },
    { procedure: 'pr_a', issue: '0' },
    { issue: '3' },
    { draft: ['a', 'b'] },
  ]) {
    expect(subjectOf(query)).toBe(null);
  }
  expect(pathOf({ draft: 'dr_a', other: ['x'] })).toBe('/fly?draft=dr_a');
});
