import { describe, expect, test } from 'vitest';
import { INTERRUPTIONS, interruptionDuties, interruptionOf, sayInterruption } from '../../lib/flight/interruptions.ts';
import { type Duty, timeline } from '../../lib/flight/timeline.ts';
import { defaultPolicy } from '../../lib/policy/default.ts';

const { radio, reaction, challengeResponse } = defaultPolicy.durations;
const own = (id: string, who: Duty['who'], at: number, takes: number, speaks: number | null = null): Duty => ({
  ...{ id, who, does: id, takes, speaks, at, follows: [], lag: 0, order: 'in turn', breath: null, deadline: null },
});

describe('an interruption', () => {
  test('goes before what has not begun, and delays it by its own time', () => {
    const call = interruptionDuties([{ id: 'a', kind: 'radio', at: 10 }], defaultPolicy);
    const { spans } = timeline([own('lever', 'PM', 10, 3), ...call]);
    expect(spans.map(({ duty, start, end }) => [duty.id, start, end])).toEqual([
      ['interruption a call', 10, 10 + radio],
      ['lever', 10 + radio, 13 + radio],
    ]);
  });
  test('waits for what is under way', () => {
    const call = interruptionDuties([{ id: 'a', kind: 'cabin', at: 11 }], defaultPolicy);
    const { spans } = timeline([own('lever', 'PM', 10, 3), ...call]);
    expect(spans[1]!.start).toBe(13);
    expect(spans[1]!.late).toBe(2);
  });
  test('an alert takes both: they look, then one reads and the other confirms', () => {
    const { spans } = timeline(interruptionDuties([{ id: 'b', kind: 'alert', at: 5 }], defaultPolicy));
    expect(spans.map(({ duty, start }) => [duty.who, start])).toEqual([
      ['PF', 5],
      ['PM', 5],
      ['PM', 5 + reaction],
      ['PF', 5 + reaction + challengeResponse / 2],
    ]);
    expect(new Set(spans.map(({ duty }) => interruptionOf(duty)))).toEqual(new Set(['b']));
  });
  test('two at one moment come one after the other; every kind has words', () => {
    const both = INTERRUPTIONS.map((kind, place) => ({ id: `i${place}`, kind, at: 0 }));
    const { spans, never } = timeline(interruptionDuties(both, defaultPolicy));
    expect(never).toEqual([]);
    const speech = spans.filter(({ duty }) => duty.speaks !== null).sort((a, b) => a.start - b.start);
    for (const [place, span] of speech.entries())
      if (place > 0) expect(span.start).toBeGreaterThanOrEqual(speech[place - 1]!.end);
    for (const kind of INTERRUPTIONS) expect(sayInterruption(kind)).not.toBe('');
    expect(interruptionOf(own('GA-01/act', 'PM', 0, 1))).toBe(null);
  });
});
