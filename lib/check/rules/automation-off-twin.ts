import { allSteps } from '../../procedure/procedure.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

const BY_HAND =
  /\bby hand\b|\bhand-?flown\b|\b(autothrust|autopilot|flight guidance)\b[^.;]*\b(off|inoperative|failed)\b/i;

export const automationOffTwin = defineRule({
  id: 'automation-off-twin',
  number: 89,
  severity: 'ADVICE',
  kind: 'X',
  stage: 'submission',
  phases: 'all',
  title: 'No twin with automation off',
  says: 'A procedure whose presses rely on autothrust says somewhere what is done without: by hand, or that it is not for such a flight.',
  why: 'Aircraft are dispatched with inoperative items: the text then names modes that nobody will see.',
  source: { text: 'minimum equipment lists of transport aircraft, in general', seen: false },
  needs: ['sheet'],
  reads: ['cue', 'only', 'object', 'value', 'expect', 'note', 'checkIfNot'],
  messages: {
    none: 'The procedure relies on {word} here and nowhere says what is done with the autothrust or the guidance inoperative.',
  },
  examples: {
    bad: '{phases: [climb], steps: [{cue: altitude >= 5 000 ft MSL, who: PF, verb: press, object: ASCENT, expect: {thrust: CLIMB, vertical: ASCENT, armed: [ALT]}}]}',
    good: '{phases: [climb], steps: [{cue: altitude >= 5 000 ft MSL, who: PF, verb: press, object: ASCENT, expect: {thrust: CLIMB, vertical: ASCENT, armed: [ALT]}, note: "Autothrust off: climb thrust by hand."}]}',
  },
  run({ procedure, sheet }, report) {
    const steps = allSteps(procedure);
    const texts = steps.flatMap((step) => [
      ...[step.only, step.object, step.value, step.note, step.checkIfNot, step.expectNote, step.checkSees],
      ...step.before.map(({ text }) => text),
    ]);
    const whole = [procedure.effectivity.note, procedure.entry.autopilot, procedure.entry.also, ...texts];
    if (whole.some((text) => BY_HAND.test(text))) return;
    for (const step of procedure.steps) {
      if (step.verb !== 'press') continue;
      const { thrust } = step.expect;
      const words = typeof thrust === 'string' ? [thrust] : thrust;
      const word = words.find((one) => sheet.modes.thrust.includes(one) && one !== sheet.modes.manual);
      if (word === undefined) continue;
      const at = { step: step.id as string, field: 'expect.thrust' };
      report({
        at,
        message: 'none',
        data: { word },
        witness: wordsOf('expect.thrust', word),
        cause: 'automation-off-twin',
      });
      return;
    }
  },
});
