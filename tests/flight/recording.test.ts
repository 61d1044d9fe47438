import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RECORDED_COLUMNS, readRecording } from '../../lib/flight/recording.ts';

const speeds = (text: string) => readRecording(text).rows.map((row) => [row.time, row.speed]);

describe('what is read', () => {
  test('the plainest file', () => {
    const read = readRecording('time,speed,height\n0,131,200\n1,133.5,196\n');
    expect(read.problems).toEqual([]);
    expect(read.columns).toEqual(['time', 'speed', 'height']);
    expect(read.rows).toEqual([
      { line: 2, time: 0, speed: 131, height: 200, altitude: null, 'vertical speed': null, distance: null },
      { line: 3, time: 1, speed: 133.5, height: 196, altitude: null, 'vertical speed': null, distance: null },
    ]);
  });
  test.each([
    ['semicolons, brackets, capitals', 'Time (s);Speed (kt)\n0;131\n'],
    ['tabs and a note above', '# simulator, session 4\ntime\tspeed\n0\t131\n'],
    ['quotes, a byte order mark, line ends of three kinds', '\uFEFF"time","speed"\r\n"0","131"\r'],
    ['columns that nobody asked for', 'frame,time,colour,speed\n1,0,red,131\n'],
    ['a unit in square brackets', 'time [s],speed [KT]\n0,131'],
  ])('%s', (_, text) => {
    expect(readRecording(text).problems).toEqual([]);
    expect(speeds(text)).toEqual([[0, 131]]);
  });
  test('one column by three spellings', () => {
    for (const name of ['vertical speed', 'vertical_speed', 'verticalSpeed', 'VERTICAL_SPEED (ft/min)']) {
      expect(readRecording(`time,speed,${name}\n0,131,-700`).rows[0]!['vertical speed'], name).toBe(-700);
    }
  });
  test('a time of day counts from the first line, over midnight too; seconds stay as they are', () => {
    const text = 'time,speed\n23:59:58,131\n23:59:59.5,132\n00:00:01,133\n';
    expect(speeds(text)).toEqual([
      [0, 131],
      [1.5, 132],
      [3, 133],
    ]);
    expect(speeds('time,speed\n-5,131\n5,132')).toEqual([
      [-5, 131],
      [5, 132],
    ]);
  });
  test('an empty cell is a figure that was not recorded', () => {
    expect(speeds('time,speed\n0,\n1,131')).toEqual([
      [0, null],
      [1, 131],
    ]);
  });
});

describe('what is not', () => {
  test.each([
    ['1o5', 'Line 3: speed "1o5" is no number; the line is left out.'],
    ['-20', 'Line 3: speed -20 is outside 0 to 600 kt; the line is left out.'],
    ['9e9', 'Line 3: speed 9e9 is outside 0 to 600 kt; the line is left out.'],
    ['NaN', 'Line 3: speed "NaN" is no number; the line is left out.'],
    ['0x10', 'Line 3: speed "0x10" is no number; the line is left out.'],
  ])('a speed of %s', (cell, says) => {
    const read = readRecording(`time,speed\n0,131\n1,${cell}\n2,133`);
    expect(read.problems).toEqual([{ line: 3, says }]);
    expect(read.rows.map((row) => row.line)).toEqual([2, 4]);
  });
  test('a time that is missing or goes back', () => {
    const read = readRecording('time,speed\n5,131\n,132\n4,133\n5,134\n6,135');
    expect(read.problems.map(({ says }) => says)).toEqual([
      'Line 3: time is missing; the line is left out.',
      'Line 4: the time does not go on from the line before; the line is left out.',
      'Line 5: the time does not go on from the line before; the line is left out.',
    ]);
    expect(read.rows.map((row) => row.line)).toEqual([2, 6]);
  });
  test.each([
    ['', 'The file is empty.'],
    ['\n\n# nothing\n', 'The file is empty.'],
    ['speed,height\n131,200', 'Line 1 is read as the header, and it names no column "time".'],
    ['time,thrust\n0,80', 'The header names neither speed nor height nor altitude: there is nothing to lay over.'],
    ['time,speed\n', 'No line could be read.'],
  ])('%j', (text, says) => {
    const read = readRecording(text);
    expect(read.rows).toEqual([]);
    expect(read.problems.at(-1)!.says).toBe(says);
  });
  test('another unit is not converted, and a column is read once', () => {
    const read = readRecording('time,speed (m/s),height,height\n0,60,200,300');
    expect(read.columns).toEqual(['time', 'height']);
    expect(read.rows[0]!.height).toBe(200);
    expect(read.problems.map(({ says }) => says)).toEqual([
      'The column speed is in m/s; it is read in kt only, so it is left out.',
      'The column height stands twice; the first one is read.',
    ]);
  });
  test('many bad lines do not make many sentences', () => {
    const read = readRecording(`time,speed\n${'x,1\n'.repeat(5_000)}0,131`);
    expect(read.problems).toHaveLength(201);
    expect(speeds(`time,speed\n${'x,1\n'.repeat(5_000)}0,131`)).toEqual([[0, 131]]);
  });
});

test('any text at all: no throw, times that go on, figures inside their ranges', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom('time', 'speed', ',', '\n', '1', '-', '.', '14:05:09', 'x', '"', ';')),
      (parts) => {
        for (const text of [parts.join(''), `time,speed,altitude\n${parts.join('')}`]) {
          const { rows } = readRecording(text);
          for (const [index, row] of rows.entries()) {
            if (index > 0) expect(row.time!).toBeGreaterThan(rows[index - 1]!.time!);
            expect(row.speed === null || (row.speed >= 0 && row.speed <= 600)).toBe(true);
          }
        }
      },
    ),
  );
});

test('the note and the screen name the same columns', () => {
  const note = readFileSync(new URL('../../lib/flight/recording.md', import.meta.url), 'utf8');
  const named = [...note.matchAll(/^\| ([a-z ]+?) +\| (\S+) +\|/gm)].map(([, name, unit]) => [name, unit]);
  expect(named).toEqual([['column', 'unit'], ...RECORDED_COLUMNS.map(({ name, unit }) => [name, unit])]);
});
