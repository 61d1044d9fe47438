import { lineWords } from '../../mode/layout.ts';
import { asked, type Doing, pathWitness, sayUnasked } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';

/** The words that the rules of a step's hand bring stand there already: the press has nothing left to do. */
function thereAlready({ flight, place, line }: Doing): boolean {
  const { graph, script } = flight.composed;
  const rules = script.places[place]!.rules ?? [];
  const active = [line.thrust, line.lateral, line.vertical, ...line.armed];
  return rules.some((rule) => {
    const made = graph.machine.modes.rules[rule]!;
    return ('any' in made ? made.any : [made]).some(({ then }) => {
      const brought = [then.vertical, then.lateral, ...(then.vertical_each ?? []), ...(then.arm_lateral ?? [])];
      const turned = Object.values(then.vertical_by_vertical ?? {});
      return [...brought, ...turned, ...(then.arm_vertical ?? [])].some(
        (word) => word !== undefined && active.includes(word),
      );
    });
  });
}

/** Where the step can't show what it expects, the flight has left the text: unless the table itself says that the press is dead. */
function isWritten({ flight, place, state, ends }: Doing): boolean {
  const { graph, script } = flight.composed;
  const rules = script.places[place]!.rules ?? [];
  const dead = graph.rule.subarray(graph.first[state]!, graph.first[state + 1]!).some((rule) => rules.includes(rule));
  return ends.length > 0 || dead;
}

export const buttonDoesNothing = defineRule({
  id: 'button-does-nothing',
  number: 78,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Button does nothing',
  says: 'A press is accepted in every mode line in which the step may be done, or its modes stand there already.',
  why: 'A press that is ignored is a classic source of confusion; a go-around switch that is dead after touchdown was known of, and no procedure said so.',
  source: { text: 'GCAA AIFN/0008/2016', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'branch'],
  messages: {
    ignored: 'Pressing {object} does nothing in {line}: the crew waits for a change that does not come.',
  },
  examples: {
    bad: '{phases: [landing], entry: {thrust: [IDLE], lateral: [COURSE], vertical: [FLARE]}, steps: [{cue: height <= 30 ft AAL, who: PF, verb: press, object: ASCENT}]}',
    good: '{phases: [climb], entry: {thrust: [CLIMB], vertical: [ASCENT], armed: [ALT]}, steps: [{cue: altitude >= 5 000 ft MSL, who: PF, verb: press, object: LEVEL}]}',
  },
  run({ procedure, flights, unasked }, report) {
    sayUnasked(flights, unasked);
    const found = asked(flights, (doings, step) => {
      if (step.verb !== 'press') return null;
      const { accepted } = doings[0]?.flight.composed.outcomes ?? { accepted: () => true };
      const doing = doings.find((one) => !accepted(one.place, one.state) && !thereAlready(one) && isWritten(one));
      return doing === undefined ? null : { doing, end: doing.state };
    });
    for (const { step, hits } of found) {
      const data = { object: step.object, line: lineWords(hits[0]!.doing.line) };
      const at = { step: step.id as string, field: 'object' };
      report({ at, message: 'ignored', data, witness: pathWitness(procedure, hits), read: [data.line] });
    }
  },
});
