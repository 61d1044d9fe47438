import { stepOfDuty } from '../../flight/crew.ts';
import { PILOTS, type Pilot, type Span, type Timeline } from '../../flight/timeline.ts';
import { worstOf } from '../../flight/timeline-spread.ts';
import { formatNumber } from '../../units/format.ts';
import { conditionsWords, flightWitness, momentAt, sayUnflown, seconds, worstFlight } from '../flown-worst.ts';
import { defineRule } from '../rule.ts';

const percent = (share: number): string => `${formatNumber(share * 100)} %`;
const WINDOWS = [
  { name: 'ten', width: 10, limit: 'busyTen' },
  { name: 'thirty', width: 30, limit: 'busyThirty' },
] as const;

type Critical = ReadonlySet<string>;

/** What is critical and falls due for a pilot within a window and begins later than policy lets it wait: work that stood in line. */
function heldUp(crew: Timeline, pilot: Pilot, from: number, width: number, wait: number, of: Critical): Span | null {
  const late = crew.spans.filter(
    ({ duty, trigger, late }) =>
      duty.who === pilot && late > wait && trigger >= from && trigger <= from + width && of.has(stepOfDuty(duty) ?? ''),
  );
  return late.reduce<Span | null>((most, span) => (most === null || span.late > most.late ? span : most), null);
}

export const tooMuchPerPilot = defineRule({
  id: 'too-much-per-pilot',
  number: 93,
  severity: 'ANSWER',
  kind: 'S',
  stage: 'submission',
  phases: 'all',
  title: 'Too much per pilot',
  says: 'Neither pilot is busier in any 10 s or 30 s than policy allows while a flight-path critical thing that falls due there stands in line. Work at the own pace, one thing after the other, is no demand.',
  why: 'Concurrent demands, not volume, cause omissions.',
  source: { text: 'Loukopoulou, Pilot error: even skilled experts make mistakes', seen: true },
  needs: ['sheet', 'policy'],
  reads: ['cue', 'who', 'verb', 'object', 'say', 'reply', 'orderWords', 'flags'],
  messages: {
    busy: '{pilot} is busy for {share} of {width} from {from} on at {weight}, {limit} is allowed; {held} waits {late}.',
  },
  examples: {
    bad: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 50000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch}, {cue: then, who: PM, verb: set, object: route page, flags: [eyes-down]}, {cue: altitude increasing, who: PM, verb: call, say: positive climb, flags: [critical]}]}',
    good: '{phases: [approach, go-around], entry: {flaps: [F35], gear: down, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, exit: {flaps: [F35]}, envelope: {weight: {from: 48000, to: 50000}}, steps: [{cue: event "gate not met", who: PF, verb: press, object: GO-AROUND switch}, {cue: altitude increasing, who: PM, verb: call, say: positive climb, flags: [critical]}, {cue: then, who: PM, verb: set, object: altitude selector}]}',
  },
  run({ procedure, steps, flown, policy, unasked }, report) {
    if (sayUnflown({ flown, unasked })) return;
    const { durations } = policy;
    const critical = new Set(steps.filter(({ flags }) => flags.includes('critical')).map(({ id }) => id as string));
    for (const pilot of PILOTS) {
      for (const { name, width, limit } of WINDOWS) {
        const most = durations[limit];
        const found = worstFlight(flown, (one) => {
          const busy = one.crew().busy[pilot][name];
          const held = heldUp(one.crew(), pilot, busy.from, width, durations.handWait, critical);
          return busy.share > most + 1e-9 && held !== null ? busy.share : null;
        });
        if (found === null) continue;
        const { trace, crew, varied } = found.one;
        const { from, share } = crew().busy[pilot][name];
        const held = heldUp(crew(), pilot, from, width, durations.handWait, critical)!;
        const slow = worstOf(varied(), (run) => run.busy[pilot][name].share)!;
        report({
          at: { step: stepOfDuty(held.duty) ?? procedure.steps[0]?.id ?? '', field: 'cue' },
          message: 'busy',
          data: {
            ...{ pilot, share: percent(share), width: seconds(width), from: seconds(from), limit: percent(most) },
            ...{ weight: conditionsWords(trace.conditions), held: held.duty.does, late: seconds(held.late) },
          },
          witness: flightWitness(
            trace,
            [momentAt(trace, held.trigger, `${held.duty.does} is due`), momentAt(trace, held.start, 'it is begun')],
            `${percent(slow.value)} at most with durations ×${durations.least} to ×${durations.most} (${slow.under})`,
          ),
          read: [most, durations.handWait, Math.round(share * 100)],
        });
        break;
      }
    }
  },
});
