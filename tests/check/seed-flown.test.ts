// The demo operator's procedures under the checks that fly: over their whole envelopes, with two pilots and one voice.
import { describe, expect, it } from 'vitest';
import { checkProcedure } from '../../lib/check/check.ts';
import { rulesThatFly } from '../../lib/check/stage.ts';
import { procedureNames, seedProcedure } from '../kit/seed.ts';
import { houseFacts } from '../kit/world.ts';

describe('the procedures of the demo operator, flown', () => {
  const flown = new Map(
    procedureNames().map((name) => [name, checkProcedure(seedProcedure(name), houseFacts, rulesThatFly())]),
  );
  it.each(procedureNames())('%s is free of STOP and of ANSWER', (name) => {
    const { findings, crashed } = flown.get(name)!;
    const held = findings.filter(({ severity }) => severity !== 'ADVICE');
    expect(held.map(({ number, message }) => `${number}: ${message}`)).toEqual([]);
    expect(crashed).toEqual([]);
  });
  it.each(['normal-take-off', 'engine-out-take-off', 'go-around', 'instrument-approach'])('%s is flown', (name) => {
    const unflown = flown.get(name)!.notChecked.filter(({ at }) => at?.field === 'phases');
    expect(unflown).toEqual([]);
  });
  it('says of the others that they are not flown', () => {
    for (const name of ['direct-to', 'holding', 'weather-deviation']) {
      expect(
        flown
          .get(name)!
          .notChecked.map(({ because }) => because)
          .join(),
      ).toContain('is flown: only take-off');
    }
  });
});
