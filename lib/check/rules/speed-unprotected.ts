import { lineWords } from '../../mode/layout.ts';
import type { Step } from '../../procedure/procedure.ts';
import { asked, pathWitness, sayUnasked, standardsWords } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';

const texts = (step: Step): string =>
  [step.checkIfNot, step.expectNote, step.note, step.checkSees, step.say, step.reply, step.object, step.value].join(
    ' ',
  );
const OWNS = /\b(thrust|levers?)\b[^.;]*\bby hand\b|\bautothrust\b[^.;]*\b(off|on)\b/i;

export const speedUnprotected = defineRule({
  id: 'speed-unprotected',
  number: 86,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Speed unprotected',
  says: 'Where a step leaves the thrust levers latched outside the climb of a take-off, it says who has the thrust: by hand, or autothrust off and on.',
  why: 'Levers that stay where they are do not wake up on low speed: idle was kept for 100 s while nobody and nothing held the speed.',
  source: { text: 'NTSB AAR-14/01', seen: true },
  needs: ['sheet'],
  reads: [
    'cue',
    'only',
    'verb',
    'object',
    'value',
    'expect',
    'checkIfNot',
    'checkSees',
    'note',
    'expectNote',
    'say',
    'reply',
  ],
  messages: {
    nobody: 'After {object} it may stand {line} on {standards}: nothing holds the speed, and nobody is told to.',
  },
  examples: {
    bad: '{phases: [descent], entry: {thrust: [IDLE], vertical: [DESCENT], armed: [ALT]}, steps: [{cue: speed >= 280 kt, who: PF, verb: set, object: speedbrake, value: out}]}',
    good: '{phases: [descent], entry: {thrust: [IDLE], vertical: [DESCENT], armed: [ALT]}, steps: [{cue: speed >= 280 kt, who: PF, verb: set, object: speedbrake, value: out, checkIfNot: PF thrust by hand}]}',
  },
  run({ procedure, flights, unasked, sheet }, report) {
    sayUnasked(flights, unasked);
    const { unprotected, climbing } = sheet.modes;
    if (unprotected === undefined) {
      unasked('the sheet names no thrust words under which nothing controls the speed', {
        step: '',
        field: 'entry.thrust',
      });
      return;
    }
    const found = asked(flights, (doings, step) => {
      for (const doing of doings) {
        const next = doing.flight.composed.script.places[doing.place + 1]?.step ?? null;
        if (OWNS.test(texts(step)) || (next !== null && OWNS.test(texts(next)))) return null;
        if (unprotected.includes(doing.line.thrust)) continue;
        const at = doing.after.findIndex(
          (line) => unprotected.includes(line.thrust) && !climbing.includes(line.vertical),
        );
        if (at >= 0 && doing.flight.composed.script.places[doing.place]!.rules !== null)
          return { doing, end: doing.ends[at]! };
      }
      return null;
    });
    for (const { step, hits } of found) {
      const { doing, end } = hits[0]!;
      const standards = standardsWords(hits.map((hit) => hit.doing.flight.standard));
      const data = { object: step.object, line: lineWords(doing.flight.composed.graph.lines[end!]!), standards };
      const at = { step: step.id as string, field: 'checkIfNot' };
      report({ at, message: 'nobody', data, witness: pathWitness(procedure, hits), read: [data.line, standards] });
    }
  },
});
