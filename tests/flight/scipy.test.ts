// Six whole flights beside SciPy's solve_ivp, which shares nothing with the engine but the formulas: 1 ft and 0.1 kt at each second.
// Without python3-scipy they count as skipped.
import { beforeAll, describe, expect, test } from 'vitest';
import { type Answer, askScipy, flown, PAIRS, SCIPY } from './scipy-flights.ts';

describe.skipIf(!SCIPY)('beside SciPy', () => {
  let answers: readonly Answer[] = [];
  beforeAll(() => {
    answers = askScipy(PAIRS, { method: 'LSODA', rtol: 1e-9, atol: 1e-9, maxStep: 1 });
  }, 300_000);

  test.each(PAIRS.map((pair, index) => [pair.name, index] as const))('%s', (_, index) => {
    const { rows, ends } = answers[index]!;
    const trace = flown(PAIRS[index]!, { sampling: 1 });
    expect(trace.end.reason).toBe('reached');
    expect(Math.abs(trace.end.time - ends.at(-1)!)).toBeLessThan(0.02);
    const { time, height, speed, distance, east, north } = trace.samples;
    let compared = 0;
    for (const [second, feet, knots, miles, right, up] of rows) {
      const row = time.findIndex((one) => Math.abs(one - second) < 1e-9);
      if (row < 0) continue;
      compared += 1;
      expect(Math.abs(height[row]! - feet)).toBeLessThan(1);
      expect(Math.abs(speed[row]! - knots)).toBeLessThan(0.1);
      expect(Math.abs(distance[row]! - miles)).toBeLessThan(0.001);
      expect(Math.abs(east[row]! - right)).toBeLessThan(0.001);
      expect(Math.abs(north[row]! - up)).toBeLessThan(0.001);
    }
    expect(compared).toBeGreaterThan(0.9 * ends.at(-1)!);
  });
});
