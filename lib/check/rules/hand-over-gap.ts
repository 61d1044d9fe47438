import { exitFits, modesText } from '../../mode/entry.ts';
import { lineWords } from '../../mode/layout.ts';
import { endWitness } from '../mode-paths.ts';
import { defineRule } from '../rule.ts';
import { absent } from '../witness.ts';

const NO_START = 'fits the entry line';

export const handOverGap = defineRule({
  id: 'hand-over-gap',
  number: 80,
  severity: 'STOP',
  kind: 'X',
  stage: 'submission',
  phases: 'all',
  title: 'Hand-over gap',
  says: 'The mode line at the entry of the procedure exists on every guidance standard that it is for, and some flight as written ends with the mode line that its exit promises.',
  why: 'What one list leaves behind the next one takes for granted: errors sit at the joins.',
  source: { text: 'Degani and Wiener, procedures in complex systems', seen: false },
  needs: ['sheet'],
  reads: [],
  messages: {
    entry: 'On standard {standard} the machine has no state with the modes of the entry line: nobody can begin here.',
    exit: 'On standard {standard} no flight as written ends with the modes of the exit line; it ends for example with {line}.',
  },
  examples: {
    bad: '{phases: [climb], entry: {thrust: [CLIMB], vertical: [ASCENT], armed: [ALT]}, exit: {vertical: [GLIDE]}, steps: [{cue: altitude >= 5 000 ft MSL, who: PM, verb: read, object: mode line}]}',
    good: '{phases: [climb], entry: {thrust: [CLIMB], vertical: [ASCENT], armed: [ALT]}, exit: {vertical: [LEVEL]}, steps: [{cue: vertical = LEVEL, who: PM, verb: read, object: mode line}]}',
  },
  run({ procedure, flights, unasked }, report) {
    const read = [procedure.entry, procedure.exit].map(modesText);
    for (const { standard, because } of flights.refused) {
      const at = { step: '', field: 'entry.vertical' };
      if (!because.includes(NO_START)) unasked(`standard ${standard}: ${because}`, at);
      else report({ at, message: 'entry', data: { standard }, witness: absent('entry.vertical'), read });
    }
    if (procedure.leavesTo.length > 0) {
      const because = `the procedures that it leaves to were not given: ${procedure.leavesTo.join(', ')}`;
      unasked(because, { step: '', field: 'exit.vertical' });
    }
    for (const flight of flights.flights) {
      const { graph, script } = flight.composed;
      const ends = [...flight.at[script.main.end]!];
      const at = { step: '', field: 'exit.vertical' };
      const [first] = ends;
      if (first === undefined) unasked(`standard ${flight.standard}: no flight as written comes to the end`, at);
      else if (!ends.some(([state]) => exitFits(graph, procedure, state))) {
        const data = { standard: flight.standard, line: lineWords(graph.lines[first[0]]!) };
        report({ at, message: 'exit', data, witness: endWitness(procedure, flight, first[1]), read });
      }
    }
  },
});
