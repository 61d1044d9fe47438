import { detentsBetween, movementAllowed, transitSeconds } from '../../aircraft/limits.ts';
import { figuresIn } from '../figures.ts';
import { defineRule } from '../rule.ts';
import { absent, inOrder, wordsOf } from '../witness.ts';

/** The phases that a movement is made in, as the sheet names them. */
const GO_AROUND = 'go-around';

export const flapSkip = defineRule({
  id: 'flap-skip',
  number: 40,
  severity: 'STOP',
  kind: 'T',
  stage: 'writing',
  phases: 'all',
  title: 'Flap detent skipped',
  says: 'Flap moves one detent at a time. A retraction over two stops is allowed only where the sheet declares it, in a go-around, and with its transit time. The detent exists in the sheet.',
  why: 'A skipped detent changes pitch and drag at once, takes longer than the crew waits, and can leave the flap uneven.',
  source: { text: 'type data of the TN-182, flap rules', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'checkWithin'],
  messages: {
    skip: 'From {from} to {to} the lever passes {passed}: select {next} first and wait for its indication.',
    unknown: '{detent} is no detent of the {type}: the sheet has {detents}.',
    unsaid: 'The step does not say which detent is selected.',
    'no-time': 'From {from} to {to} the flap needs {seconds} s, and the step gives no time by which it must be there.',
    'too-short': 'From {from} to {to} the flap needs {seconds} s; the step gives it {given} s and would call a fault.',
  },
  examples: {
    bad: '{phases: [approach], entry: {flaps: [F6]}, steps: [{cue: speed <= 190 kt, who: PM, verb: select, object: flap lever, value: F18}]}',
    good: '{phases: [approach], entry: {flaps: [F6]}, steps: [{cue: speed <= 205 kt, who: PM, verb: select, object: flap lever, value: F12}]}',
  },
  run({ states, sheet, procedure }, report) {
    const names = sheet.detents.map((detent) => detent.name);
    for (const { step, selection, moves, before } of states) {
      const at = { step: step.id, field: 'value' };
      if (selection === null) continue;
      if (selection.length === 0) {
        report({ at, message: 'unsaid', witness: absent('value') });
        continue;
      }
      const strange = selection.find((name) => !names.includes(name));
      if (strange !== undefined) {
        const data = { detent: strange, type: sheet.type, detents: names.join(', ') };
        report({ at, message: 'unknown', data, witness: wordsOf('value', step.value), read: names });
        continue;
      }
      // Where nothing says what the flap is, no order of detents can be broken.
      if (!before.flapsKnown) continue;
      const phase =
        before.goingAround || procedure.phases.includes(GO_AROUND) ? GO_AROUND : (procedure.phases[0] ?? '');
      for (const { from, to, through } of moves) {
        if (through.length <= 2) continue;
        const seconds = transitSeconds(sheet, from, to) ?? 0;
        const says = `${from} is possible here; ${to} is ${through.length - 1} stops away`;
        if (!movementAllowed(sheet, from, to, phase)) {
          const passed = (detentsBetween(sheet, from, to) ?? []).slice(1, -1).join(' and ');
          const data = { from, to, passed, next: through[1]! };
          report({ at, message: 'skip', data, witness: inOrder(from, to, says), read: [from, to, phase] });
          continue;
        }
        const given = figuresIn(step.checkWithin).filter((figure) => figure.unit === 's');
        const longest = Math.max(...given.map((figure) => figure.value));
        const place = { step: step.id as string, field: 'checkWithin' };
        if (given.length === 0) {
          report({
            at: place,
            message: 'no-time',
            data: { from, to, seconds },
            witness: absent('checkWithin'),
            read: [seconds],
          });
        } else if (longest < seconds) {
          const witness = wordsOf('checkWithin', step.checkWithin);
          report({
            at: place,
            message: 'too-short',
            data: { from, to, seconds, given: longest },
            witness,
            read: [seconds],
          });
        }
      }
    }
  },
});
