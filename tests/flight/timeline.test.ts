import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Duty, type Pilot, timeline } from '../../lib/flight/timeline.ts';
import { busiest } from '../../lib/flight/timeline-busy.ts';
import { varied, worstOf } from '../../lib/flight/timeline-spread.ts';
import { goAroundStudy, studyDuty } from './go-around-study.ts';

const spanOf = (run: ReturnType<typeof timeline>, id: string) => run.spans.find((span) => span.duty.id === id)!;

describe('the go-around of 48 t, figures of the crew study of the reference', () => {
  const [first, moved] = [timeline(goAroundStudy('check first')), timeline(goAroundStudy('check at the end'))];

  it('reads the modes at 2 to 6 s right after the press', () => {
    const { start, end } = spanOf(first, 'read modes');
    expect(Math.abs(start - 2)).toBeLessThanOrEqual(1);
    expect(Math.abs(end - 6)).toBeLessThanOrEqual(1);
    expect(Math.abs(first.end - 27)).toBeLessThanOrEqual(1);
  });
  it('reads them at 26 to 29 s when the reading is moved to the end', () => {
    const { start, end } = spanOf(moved, 'read modes');
    expect(Math.abs(start - 26)).toBeLessThanOrEqual(1);
    expect(Math.abs(end - 29)).toBeLessThanOrEqual(1);
  });
  it('has PM busy for 70 % of the first 30 s, and for 92 and 95 % of the worst 10 s', () => {
    expect(first.busy.PM.firstThirty).toBeCloseTo(0.7, 2);
    expect(moved.busy.PM.firstThirty).toBeCloseTo(0.7, 2);
    expect(Math.abs(first.busy.PM.ten.share - 0.92)).toBeLessThanOrEqual(0.02);
    expect(Math.abs(moved.busy.PM.ten.share - 0.95)).toBeLessThanOrEqual(0.02);
  });
  it('lets the 400 ft call wait 5.5 s behind the radio', () => {
    const call = moved.collisions.find(({ second }) => second.duty.id === 'call 400')!;
    expect(call.first.duty.id).toBe('radio');
    expect(Math.abs(call.seconds - 5.5)).toBeLessThanOrEqual(1);
    expect(spanOf(first, 'call 400').late).toBeLessThan(1);
  });
  it('waits longest for the gear lever with the reading first: 2.1 s', () => {
    const longest = first.spans.reduce((a, b) => (b.late > a.late ? b : a));
    expect(longest.duty.id).toBe('gear lever');
    expect(Math.abs(longest.late - 2.1)).toBeLessThanOrEqual(1);
  });
  it('reads later still with durations stretched, and says under which', () => {
    const all = varied(goAroundStudy('check at the end'), { least: 0.7, most: 1.5 });
    const worst = worstOf(all, (run) => spanOf(run, 'read modes').start)!;
    expect(worst.value).toBeGreaterThan(spanOf(moved, 'read modes').start + 5);
    expect(worst.under).not.toBe('');
    expect(all.searched).toContain('×0.7 to ×1.5');
  });
});

describe('a pilot and the voice', () => {
  it('do one thing at a time, in the order in which things fall due', () => {
    const run = timeline([
      studyDuty('b', 'PM', 2, { at: 1 }),
      studyDuty('a', 'PM', 3, { at: 0 }),
      studyDuty('c', 'PF', 1, { at: 0 }),
    ]);
    expect(run.spans.map(({ duty, start, late }) => [duty.id, start, late])).toEqual([
      ['a', 0, 0],
      ['c', 0, 0],
      ['b', 3, 2],
    ]);
  });
  it('are taken by an interruption before all that has not begun', () => {
    const duties = [studyDuty('a', 'PM', 3, { at: 0 }), studyDuty('b', 'PM', 2, { at: 0 })];
    const run = timeline([...duties, studyDuty('cabin', 'PM', 6, { at: 1, order: 'first', speaks: 0 })]);
    expect(run.spans.map(({ duty, start }) => [duty.id, start])).toEqual([
      ['a', 0],
      ['cabin', 3],
      ['b', 9],
    ]);
  });
  it('are spoken over by an automatic voice, which waits for nobody', () => {
    const run = timeline([
      studyDuty('call', 'PM', 2, { at: 0, speaks: 0 }),
      { ...studyDuty('five hundred', 'PM', 1, { at: 1, order: 'fixed', speaks: 0 }), who: null },
    ]);
    expect(run.collisions).toMatchObject([{ seconds: 1, over: true, second: { duty: { id: 'five hundred' } } }]);
  });
  it('answer before anything else is said', () => {
    const run = timeline([
      studyDuty('call', 'PM', 1, { at: 0, speaks: 0 }),
      studyDuty('other call', 'PM', 2, { at: 0.5, speaks: 0 }),
      studyDuty('answer', 'PF', 1, { follows: ['call'], speaks: 0, order: 'answer' }),
    ]);
    expect(run.spans.map(({ duty, start }) => [duty.id, start])).toEqual([
      ['call', 0],
      ['answer', 1],
      ['other call', 2],
    ]);
  });
  it('begin with the hands while another speaks, and say their words when it is done', () => {
    const run = timeline([
      studyDuty('radio', 'PF', 4, { at: 0, speaks: 0 }),
      studyDuty('flap, "six"', 'PM', 3, { at: 0, speaks: 2 }),
    ]);
    expect(run.spans[1]).toMatchObject({ start: 2, said: 4, end: 5 });
    expect(run.collisions).toMatchObject([{ seconds: 2, first: { duty: { id: 'radio' } } }]);
  });
  it('say V1 and VR in one breath', () => {
    const breath = (at: number, id: string) => studyDuty(id, 'PM', 1, { at, speaks: 0, breath: 'V1 VR' });
    expect(timeline([breath(0, 'V one'), breath(0.5, 'rotate')]).collisions).toEqual([]);
  });
  it('name what never begins, since what it follows never does', () => {
    const run = timeline([
      studyDuty('a', 'PM', 1, { follows: ['b'] }),
      studyDuty('b', 'PM', 1, { follows: ['a'] }),
      studyDuty('c', 'PM', 1, { at: 0 }),
    ]);
    expect(run.never.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(run.spans).toHaveLength(1);
  });
  it('have so much left to a deadline', () => {
    expect(timeline([studyDuty('a', 'PF', 4, { at: 3, deadline: 10 })]).spans[0]!.slack).toBe(3);
  });
});

describe('whatever the duties', () => {
  const duty = fc.record({
    who: fc.constantFrom<Pilot>('PF', 'PM'),
    takes: fc.integer({ min: 1, max: 9 }),
    at: fc.integer({ min: 0, max: 30 }),
    speaks: fc.constantFrom<number | null>(null, 0),
    order: fc.constantFrom<Duty['order']>('in turn', 'first'),
  });
  const all = fc
    .array(duty, { maxLength: 12 })
    .map((list) => list.map(({ who, takes, ...rest }, index) => studyDuty(`d${index}`, who, takes, rest)));
  it('nobody does two things at once, nothing starts before its trigger, and all of it is done', () => {
    fc.assert(
      fc.property(all, (duties) => {
        const { spans, never } = timeline(duties);
        expect(spans.length + never.length).toBe(duties.length);
        expect(never).toEqual([]);
        for (const a of spans) {
          expect(a.start).toBeGreaterThanOrEqual(a.trigger);
          for (const b of spans) {
            const shared = a.duty.who === b.duty.who || (a.duty.speaks !== null && b.duty.speaks !== null);
            if (a !== b && shared) expect(Math.min(a.end, b.end)).toBeLessThanOrEqual(Math.max(a.start, b.start));
          }
        }
      }),
    );
  });
  it('no window is busier than the one found, looked for second by second', () => {
    fc.assert(
      fc.property(all, fc.constantFrom(10, 30), (duties, width) => {
        const own = timeline(duties).spans.filter((span) => span.duty.who === 'PM');
        const found = busiest(own, width);
        for (let from = 0; from < 120; from += 1) {
          const work = own.reduce(
            (sum, { start, end }) => sum + Math.max(0, Math.min(end, from + width) - Math.max(start, from)),
            0,
          );
          expect(work / width).toBeLessThanOrEqual(found.share + 1e-9);
        }
      }),
    );
  });
  it('the worst of the search is never better than the duties as they stand', () => {
    fc.assert(
      fc.property(all, (duties) => {
        const all = varied(duties, { least: 0.7, most: 1.5 });
        const worst = worstOf(all, (run) => run.end);
        expect(worst?.value ?? 0).toBeGreaterThanOrEqual(all.nominal.end);
      }),
      { numRuns: 30 },
    );
  });
});
