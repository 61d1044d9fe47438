import { crossover } from '../../air/airspeed.ts';
import { formatNumber } from '../../units/format.ts';
import type { Cas, Mach } from '../../units/quantity.ts';
import { defineRule } from '../rule.ts';
import { altitudeBounds, knotsOf, levelIn, machIn } from '../speed-text.ts';
import { textsOf } from '../texts.ts';

const SAID =
  /(\d{3}) ?kt and M(?:ach)? ?(0?\.\d+) (?:meet|cross|are the same)[^.;]{0,20}?\bat (FL ?\d{2,3}|[\d \u00a0\u202f]{4,7}ft MSL)/gi;

export const crossOverPoint = defineRule({
  id: 'cross-over-point',
  number: 53,
  severity: 'ANSWER',
  kind: 'N',
  stage: 'writing',
  phases: 'all',
  title: 'Point of the cross-over',
  says: "Where a text changes between an indicated speed and a Mach number at an altitude, that altitude is within the policy's distance of the one at which both are the same; neither is above VMO or MMO.",
  why: 'Changed too early the aircraft speeds up or slows down by itself, too late it runs into the other limit.',
  source: { text: 'standard atmosphere, ISO 2533: 345 kt and M 0.81 meet at 24 606 ft', seen: false },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'verb', 'object', 'value', 'note', 'before'],
  messages: {
    apart:
      '{speed} kt and M {mach} meet at {meet} ft, the text changes at {said} ft: in between the aircraft flies {what}.',
    limit: '{speed} is above the limit {limit} of the aircraft.',
  },
  examples: {
    bad: '{phases: [climb], entry: {speed: 290 kt}, steps: [{cue: flight-level >= FL 200, who: PF, verb: set, object: speed selector, value: M 0.78}]}',
    good: '{phases: [climb], entry: {speed: 290 kt}, steps: [{cue: mach >= M 0.78, who: PF, verb: set, object: speed selector, value: M 0.78}]}',
  },
  run({ states, steps, procedure, sheet, policy }, report) {
    const { crossover: near } = policy.gates;
    const limits = { kt: sheet.limits.vmo.value, mach: sheet.limits.mmo.value };
    const ask = (at: { step: string; field: string }, speed: number, mach: number, said: number): void => {
      const meet = crossover(speed as Cas, mach as Mach);
      if (!meet.ok || Math.abs(meet.value - said) <= near) return;
      const what = said < meet.value ? 'faster than the indicated speed' : 'faster than the Mach number';
      const figures = { meet: formatNumber(Math.round(meet.value)), said: formatNumber(said) };
      const says = `${speed} kt and M ${mach} meet at ${figures.meet} ft`;
      const witness = { kind: 'envelope', at: { altitude: Math.round(meet.value) }, says } as const;
      report({ at, message: 'apart', data: { speed, mach, ...figures, what }, witness, read: [near] });
    };
    let mach = machIn(procedure.entry.speed);
    let knots = /^\d{3} ?kt/.test(procedure.entry.speed) ? Number.parseInt(procedure.entry.speed, 10) : null;
    for (const { step, ways, done } of states) {
      if (!['set', 'select'].includes(step.verb) || !/\bspeed\b/i.test(step.object)) continue;
      const at = { step: step.id as string, field: 'value' };
      const { target } = done;
      const own = target.kind === 'expression' && target.setBy === step.id ? knotsOf(target.term) : null;
      const given = /\bor\b/.test(step.value) ? null : machIn(step.value);
      const altitude = ways.flatMap((way) => altitudeBounds(way)).find(({ feet }) => feet > 0)?.feet ?? null;
      for (const [value, limit, unit] of [
        [given, limits.mach, 'M'],
        [own, limits.kt, 'kt'],
      ] as const) {
        if (value === null || value <= limit) continue;
        const say = (figure: number): string => (unit === 'M' ? `M ${figure}` : `${figure} kt`);
        const witness = {
          kind: 'envelope',
          at: { [unit]: value },
          says: `${say(value)} against ${say(limit)}`,
        } as const;
        report({ at, message: 'limit', data: { speed: say(value), limit: say(limit) }, witness, read: [limit] });
      }
      if (altitude !== null && given !== null && knots !== null) ask(at, knots, given, altitude);
      if (altitude !== null && own !== null && given === null && mach !== null) ask(at, own, mach, altitude);
      if (given !== null) [mach, knots] = [given, null];
      else if (own !== null) [mach, knots] = [null, own];
    }
    for (const { at, text } of textsOf(procedure, steps)) {
      if (!text.includes('kt')) continue;
      for (const [, speed, number, level] of text.matchAll(SAID)) {
        const said = levelIn(level!);
        if (said !== null) ask({ ...at }, Number(speed), Number(number), said);
      }
    }
  },
});
