import type { Step } from '../../procedure/procedure.ts';
import { asked, type Doing, pathWitness, sayUnasked } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';

const NOTHING = 'nothing';

/** What the press does to the mode line: the vertical word where it changes, else the lateral or armed words, else nothing. */
function meanings({ line, after }: Doing): readonly string[] {
  return after.map((next) => {
    if (next.vertical !== line.vertical) return next.vertical;
    if (next.lateral !== line.lateral) return next.lateral;
    return next.armed.join() === line.armed.join() && next.thrust === line.thrust ? NOTHING : 'other';
  });
}

/** The step says where it is done, or has each result read. */
function said(step: Step, doing: Doing, results: readonly string[]): boolean {
  const { cue, only } = doing.flight.composed.script.places[doing.place]!;
  const { vertical } = step.expect;
  const read = typeof vertical === 'string' ? [vertical] : vertical;
  return cue !== null || only !== null || results.every((word) => word === NOTHING || read.includes(word));
}

export const oneControlTwoMeanings = defineRule({
  id: 'one-control-two-meanings',
  number: 88,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'One control, two meanings',
  says: 'Where one press leads to different vertical modes by the state in which it is made, the step says the state, or has each result read.',
  why: 'The same hand movement does two things; the crew expects the one that it has seen before.',
  source: { text: 'Sarter and Woods, mode error in the operation of automated aircraft', seen: false },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'expect'],
  messages: {
    both: 'Pressing {object} means {one} or {other} here, by the mode line in which it is pressed: the step does not say which.',
  },
  examples: {
    bad: '{phases: [descent], entry: {thrust: [IDLE, CLIMB], vertical: [DESCENT, ASCENT], armed: [ALT]}, steps: [{cue: event "rate assigned", who: PF, verb: press, object: RATE}]}',
    good: '{phases: [descent], entry: {thrust: [IDLE, CLIMB], vertical: [DESCENT, ASCENT], armed: [ALT]}, steps: [{cue: event "rate assigned" and vertical = DESCENT, who: PF, verb: press, object: RATE}]}',
  },
  run({ procedure, flights, unasked }, report) {
    sayUnasked(flights, unasked);
    const found = asked(flights, (doings, step) => {
      if (step.verb !== 'press') return null;
      const vertical = doings.flatMap((doing) =>
        meanings(doing).map((word, k) => ({ doing, word, end: doing.ends[k]! })),
      );
      const [first] = vertical;
      const changed = vertical.filter(({ doing, end }) => {
        const line = doing.flight.composed.graph.lines[end]!;
        return line.vertical !== doing.line.vertical;
      });
      const other = changed.find(({ word }) => word !== changed[0]!.word);
      if (first === undefined || other === undefined) return null;
      return said(step, first.doing, [...new Set(changed.map(({ word }) => word))]) ? null : other;
    });
    for (const { step, hits } of found) {
      const { doing, end } = hits[0]!;
      const all = [...new Set(hits.flatMap((hit) => hit.doing.flight.composed.graph.lines[hit.end!]!.vertical))];
      const one = doing.flight.composed.graph.lines[end!]!.vertical;
      const doings = [...doing.flight.at[doing.place]!.keys()].flatMap((state) =>
        Array.from(
          doing.flight.composed.outcomes.after(doing.place, state),
          (to) => doing.flight.composed.graph.lines[to]!.vertical,
        ),
      );
      const other = doings.find((word) => word !== one) ?? one;
      const at = { step: step.id as string, field: 'cue' };
      report({
        at,
        message: 'both',
        data: { object: step.object, one: other, other: one },
        witness: pathWitness(procedure, hits),
        read: all,
      });
    }
  },
});
