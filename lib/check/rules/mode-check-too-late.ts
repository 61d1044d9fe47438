import { positionWords } from '../../procedure/locate.ts';
import { formatNumber } from '../../units/format.ts';
import { pressesRead } from '../crew-reading.ts';
import {
  conditionsWords,
  eventMoment,
  firstMode,
  flightWitness,
  momentAt,
  sayUnflown,
  seconds,
  worstFlight,
} from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

export const modeCheckTooLate = defineRule({
  id: 'mode-check-too-late',
  number: 90,
  severity: 'STOP',
  kind: 'S',
  stage: 'submission',
  phases: 'all',
  title: 'Mode check too late',
  says: 'After a press the new modes are read within the seconds that policy gives, and before any step that hangs on them.',
  why: 'A reading moved down the list, without a word about the risk, let an aircraft go around without going around.',
  source: { text: 'ATSB AO-2007-044', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'who', 'verb', 'object', 'say', 'reply', 'orderWords', 'checkWithin'],
  messages: {
    late: 'The modes of {press} are read {late} after the press at {weight}, {limit} at the latest; {between}.',
    behind: 'The modes of {press} are read after {late}, but {between}: each of them hangs on a mode nobody has read.',
  },
  examples: {
    bad: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 50000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch, expect: {vertical: LIFT}}, {cue: then, who: PM, verb: call, object: radio, say: (radio) going around}, {cue: then, who: PM, verb: read, object: mode line, say: "go-around, straight, lift"}]}',
    good: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 50000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch, expect: {vertical: LIFT}}, {cue: then, who: PM, verb: read, object: mode line, say: "go-around, straight, lift"}, {cue: then, who: PM, verb: call, object: radio, say: (radio) going around}]}',
  },
  run({ procedure, flown, policy, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const limit = policy.durations.modeReading;
    for (const { press, reading } of pressesRead(procedure)) {
      const found = worstFlight(flown, (one) => reading(one.crew())?.late ?? null);
      if (found === null) continue;
      const { trace, crew, varied } = found.one;
      const read = reading(crew())!;
      const slowest = varied().runs.reduce((most, run) => Math.max(most, reading(run.timeline)?.late ?? 0), 0);
      if (found.value <= limit && read.between.length === 0) continue;
      const capture = firstMode(trace, 'CAPTURE');
      const names = read.between.map((id) => positionWords(procedure, id));
      const before = names.length === 0 ? 'nothing else is done before' : `before that come ${names.join(', ')}`;
      const moments = [
        momentAt(trace, read.pressed, `press of ${press.object}`),
        momentAt(trace, read.start, 'the modes are read'),
        ...(capture === null
          ? []
          : [
              {
                ...eventMoment(capture),
                says: `CAPTURE at ${formatNumber(Math.round(capture.verticalSpeed / 10) * 10)} ft/min`,
              },
            ]),
      ];
      const stretched = `with every duration ×${policy.durations.least} to ×${policy.durations.most}: ${seconds(slowest)} at most`;
      report({
        at: { step: read.step, field: 'cue' },
        message: found.value > limit ? 'late' : 'behind',
        data: {
          press: press.object,
          late: seconds(found.value),
          weight: conditionsWords(trace.conditions),
          limit: seconds(limit),
          between: before,
        },
        witness: flightWitness(trace, moments, stretched),
        read: [limit, Math.round(found.value), ...read.between],
      });
    }
  },
});
