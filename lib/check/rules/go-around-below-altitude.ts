import { lineWords } from '../../mode/layout.ts';
import { unnoticed } from '../arming.ts';
import { asked, type Doing, pathWitness, sayUnasked, standardsWords } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';

const GO_AROUND = 'go-around';
const MISSED = /\bmissed[- ]approach altitude\b/i;
const SELECTOR = /\baltitude selector\b|\bselected altitude\b/i;

export const goAroundBelowAltitude = defineRule({
  id: 'go-around-below-altitude',
  number: 87,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: ['approach', 'landing', 'go-around'],
  title: 'Go-around below altitude',
  says: 'Before a go-around can be needed the missed-approach altitude stands in the selector, and after the press somebody reads that it is armed.',
  why: 'With the selected altitude below the aircraft a go-around climbs with nothing to stop it: 15 states of the table.',
  source: { text: 'transition table of the TN-182, T13', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'expect', 'checkIfNot'],
  messages: {
    pressed:
      'Pressed with the selected altitude below the aircraft, {object} gives {line} on {standards}: the climb has no end.',
    unset:
      'From here a go-around may be needed, and nothing has set the missed-approach altitude: it would climb in {line} on {standards}.',
  },
  examples: {
    bad: '{phases: [approach], entry: {thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE], armed: [], selectedAltitude: 2 000 ft MSL}, steps: [{cue: height <= 1 000 ft AAL, who: PM, verb: call, object: gate}]}',
    good: '{phases: [approach], entry: {thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE], armed: [], selectedAltitude: missed-approach altitude}, steps: [{cue: height <= 1 000 ft AAL, who: PM, verb: call, object: gate}]}',
  },
  run({ procedure, flights, unasked, sheet }, report) {
    sayUnasked(flights, unasked);
    const { modes } = sheet;
    const ids = (modes.environment ?? []).find((one) => one.name === GO_AROUND)?.rules ?? [];
    if (ids.length === 0)
      unasked('the sheet does not say which rule a go-around is', { step: '', field: 'entry.vertical' });
    const steps = [...procedure.steps, ...procedure.branches.flatMap((branch) => branch.steps)];
    const set = steps.find((step) => SELECTOR.test(step.object) && MISSED.test(step.value));
    const ready = MISSED.test(procedure.entry.selectedAltitude) || set !== undefined;
    const bad = ({ flight, ends }: Doing, from: readonly number[] = ends): number | undefined =>
      from.find((end) => {
        const line = flight.composed.graph.lines[end]!;
        return modes.climbing.includes(line.vertical) && line.rel === 'below';
      });
    const around = ({ flight, state }: Doing): readonly number[] => {
      const { first, rule, to } = flight.composed.graph;
      const edges = Array.from({ length: first[state + 1]! - first[state]! }, (_, k) => first[state]! + k);
      return edges.filter((e) => ids.includes(modes.rules[rule[e]!]!.id)).map((e) => to[e]!);
    };
    const presses = (doing: Doing): boolean =>
      (doing.flight.composed.script.places[doing.place]!.rules ?? []).some((rule) =>
        ids.includes(modes.rules[rule]!.id),
      );
    let told = false;
    const found = asked(flights, (doings) => {
      for (const doing of doings) {
        const end = presses(doing) ? bad(doing) : !ready ? bad(doing, around(doing)) : undefined;
        if (end !== undefined && (!presses(doing) || unnoticed(doing) === end)) return { doing, end };
      }
      return null;
    });
    for (const { step, hits } of found) {
      const { doing, end } = hits[0]!;
      const pressed = presses(doing);
      // One place is enough: what is missing is missing from here on.
      if (!pressed && told) continue;
      told ||= !pressed;
      const standards = standardsWords(hits.map((hit) => hit.doing.flight.standard));
      const line = lineWords(doing.flight.composed.graph.lines[end!]!);
      const at = { step: step.id as string, field: pressed ? 'object' : 'cue' };
      const data = { line, standards, ...(pressed ? { object: step.object } : {}) };
      report({ at, message: pressed ? 'pressed' : 'unset', data, witness: pathWitness(procedure, hits), read: [line] });
    }
  },
});
