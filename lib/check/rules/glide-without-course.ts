import type { ModeSet } from '../../aircraft/mode-set.ts';
import { asked, pathWitness, sayUnasked, standardsWords } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';

/** For each vertical mode that is only entered on certain lateral modes, and that no rule leaves when these are lost: which. */
function tied(modes: ModeSet): ReadonlyMap<string, readonly string[]> {
  const parts = modes.rules.flatMap((rule) => ('any' in rule ? rule.any : [rule]));
  const found = new Map<string, readonly string[]>();
  for (const word of modes.vertical) {
    const entries = parts.filter(({ then }) => then.vertical === word);
    const laterals = entries.map(({ when }) =>
      when.lateral !== undefined && 'in' in when.lateral ? when.lateral.in : null,
    );
    const left = parts.some(({ when }) => {
      const here = when.vertical !== undefined && 'in' in when.vertical && when.vertical.in.includes(word);
      return here && when.lateral !== undefined && 'not' in when.lateral;
    });
    if (entries.length === 0 || left || laterals.includes(null)) continue;
    found.set(
      word,
      laterals.flatMap((list) => list ?? []),
    );
  }
  return found;
}

export const glideWithoutCourse = defineRule({
  id: 'glide-without-course',
  number: 85,
  severity: 'STOP',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Glide without course',
  says: 'No step leaves the lateral beam while the vertical mode that hangs on it stays active.',
  why: 'The press takes the lateral mode only: the aircraft goes on down a glidepath that is not on its track.',
  source: { text: 'transition table of the TN-182, T06 and T10', seen: true },
  needs: ['sheet'],
  reads: ['cue', 'only', 'verb', 'object', 'value', 'expect'],
  messages: {
    left: '{object} leaves {lateral} and {vertical} stays on {standards}: the descent goes on beside the beam that it is measured by.',
  },
  examples: {
    bad: '{phases: [approach], entry: {thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, steps: [{cue: event "heading assigned", who: PF, verb: press, object: HEADING}]}',
    good: '{phases: [approach], entry: {thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE]}, steps: [{cue: event "heading assigned", who: PF, verb: press, object: LEVEL}, {cue: vertical = LEVEL, who: PF, verb: press, object: HEADING}]}',
  },
  run({ procedure, flights, unasked, sheet }, report) {
    sayUnasked(flights, unasked);
    const ties = tied(sheet.modes);
    const found = asked(flights, (doings) => {
      for (const doing of doings) {
        const laterals = ties.get(doing.line.vertical);
        if (laterals === undefined || !laterals.includes(doing.line.lateral)) continue;
        const at = doing.after.findIndex(
          (line) => line.vertical === doing.line.vertical && !laterals.includes(line.lateral),
        );
        if (at >= 0) return { doing, end: doing.ends[at]! };
      }
      return null;
    });
    for (const { step, hits } of found) {
      const { lateral, vertical } = hits[0]!.doing.line;
      const standards = standardsWords(hits.map((hit) => hit.doing.flight.standard));
      const data = { object: step.object, lateral, vertical, standards };
      const at = { step: step.id as string, field: 'object' };
      report({ at, message: 'left', data, witness: pathWitness(procedure, hits), read: [vertical, standards] });
    }
  },
});
