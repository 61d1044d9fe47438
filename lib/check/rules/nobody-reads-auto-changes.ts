import type { Flight } from '../../mode/flights.ts';
import { allSteps, type Procedure } from '../../procedure/procedure.ts';
import { endWitness, sayUnasked } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';

type Change = { readonly word: string; readonly event: string; readonly index: number; readonly place: number };

/** Vertical modes that come by themselves somewhere in the main line of a flight as written, each where it comes first. */
function comingByThemselves({ composed, found }: Flight): ReadonlyMap<string, Change> {
  const { graph, script } = composed;
  // Reversions are a question of their own (83).
  const reversions = graph.machine.modes.reversions ?? [];
  const changes = new Map<string, Change>();
  for (let index = 0; index < found.states.length; index += 1) {
    const from = found.parent[index]!;
    if (from < 0) continue;
    const [before, here] = [composed.parts(found.states[from]!), composed.parts(found.states[index]!)];
    if (before.place !== here.place || here.place >= script.main.end) continue;
    const word = graph.lines[here.state]!.vertical;
    if (word === graph.lines[before.state]!.vertical || changes.has(word)) continue;
    for (let e = graph.first[before.state]!; e < graph.first[before.state + 1]!; e += 1) {
      const rule = graph.machine.rules[graph.rule[e]!]!;
      if (graph.to[e] !== here.state || rule.who !== 'auto' || reversions.includes(rule.id) || changes.has(word))
        continue;
      changes.set(word, { word, event: rule.event, index, place: here.place });
    }
  }
  return changes;
}

/** Every word that some step reads, says, waits for or expects. */
function readWords(procedure: Procedure, spoken: Readonly<Record<string, string>>): (word: string) => boolean {
  const text = allSteps(procedure)
    .flatMap((step) => [step.cue, step.checkSees, step.checkIfNot, step.only, String(step.expect.vertical)])
    .concat(procedure.branches.map((branch) => branch.when))
    .join(' ');
  const said = allSteps(procedure)
    .flatMap((step) => [step.say, step.reply, step.orderWords])
    .join(' ')
    .toLowerCase();
  return (word) => {
    const written = new RegExp(`(?<![\\w-])${word}(?![\\w-])`).test(text);
    return written || (spoken[word] !== undefined && said.includes(spoken[word].toLowerCase()));
  };
}

export const nobodyReadsAutoChanges = defineRule({
  id: 'nobody-reads-auto-changes',
  number: 84,
  severity: 'ANSWER',
  kind: 'X',
  stage: 'writing',
  phases: 'all',
  title: 'Nobody reads automatic changes',
  says: 'Every vertical mode that comes by itself on the way of the procedure is read, said, waited for or expected by some step; read by eye counts.',
  why: 'The changes that nobody pressed for are the ones that are missed.',
  source: { text: 'Mumaw and others, analysis of pilots monitoring the automation', seen: false },
  needs: ['sheet'],
  reads: ['cue', 'only', 'say', 'reply', 'expect', 'checkSees', 'checkIfNot'],
  messages: {
    unread: '{word} comes by itself here ({event}), and no step has it read.',
  },
  examples: {
    bad: '{phases: [climb], entry: {thrust: [CLIMB], vertical: [ASCENT], armed: [ALT]}, steps: [{cue: event "top of climb", who: PM, verb: check, object: fuel}]}',
    good: '{phases: [climb], entry: {thrust: [CLIMB], vertical: [ASCENT], armed: [ALT]}, steps: [{cue: vertical = CAPTURE, who: PM, verb: read, object: mode line, say: capture}, {cue: vertical = LEVEL, who: PM, verb: read, object: mode line, say: level}]}',
  },
  run({ procedure, flights, unasked, sheet }, report) {
    sayUnasked(flights, unasked);
    const reads = readWords(procedure, sheet.modes.spoken);
    const told = new Set<string>();
    for (const flight of flights.flights) {
      for (const { word, event, index, place } of comingByThemselves(flight).values()) {
        if (reads(word) || told.has(word)) continue;
        told.add(word);
        const step = flight.composed.script.places[place]!.step!;
        const at = { step: step.id as string, field: 'expect.vertical' };
        report({
          at,
          message: 'unread',
          data: { word, event },
          witness: endWitness(procedure, flight, index),
          read: [word, event],
        });
      }
    }
  },
});
