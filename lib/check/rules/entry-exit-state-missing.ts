import type { StateLine } from '../../procedure/procedure.ts';
import { defineRule } from '../rule.ts';
import { absent } from '../witness.ts';

/** In the order in which a pilot would say them. */
const PARTS: readonly (readonly [words: string, field: string, stated: (line: StateLine) => boolean])[] = [
  ['flaps', 'flaps', (line) => line.flaps.length > 0],
  ['gear', 'gear', (line) => line.gear !== ''],
  ['speed target', 'speed', (line) => line.speed !== ''],
  ['autopilot', 'autopilot', (line) => line.autopilot !== ''],
  ['thrust mode', 'thrust', (line) => line.thrust.length > 0],
  ['lateral mode', 'lateral', (line) => line.lateral.length > 0],
  ['vertical mode', 'vertical', (line) => line.vertical.length > 0],
  ['armed modes', 'armed', (line) => line.armed !== null],
  ['selected altitude', 'selectedAltitude', (line) => line.selectedAltitude !== ''],
];

export const entryExitStateMissing = defineRule({
  id: 'entry-exit-state-missing',
  number: 22,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'writing',
  phases: ['take-off', 'initial climb', 'climb', 'cruise', 'descent', 'approach', 'landing', 'go-around', 'holding'],
  title: 'Entry or exit state missing',
  says: 'A procedure states the state it starts from and the state it guarantees at its end: flaps, gear, speed target, autopilot, modes, armed modes (nothing armed is said too) and selected altitude.',
  why: 'The next procedure begins where this one ends: what is not said is taken for granted, differently by each pilot.',
  source: { text: 'NASA CR 177642 (1994)', seen: false },
  needs: [],
  reads: [],
  messages: {
    entry: 'The entry state does not say: {missing}. The steps may be flown from a state they were never meant for.',
    exit: 'The exit state does not say: {missing}. Nobody can tell whether the next procedure may begin here.',
  },
  examples: {
    bad: '{exit: {flaps: [], gear: "", speed: "", autopilot: "", thrust: [], lateral: [], vertical: [], armed: null, selectedAltitude: ""}}',
    good: '{exit: {flaps: [F0], gear: up, speed: 250 kt, autopilot: "on", thrust: [CLIMB], lateral: [ROUTE], vertical: [ASCENT], armed: [ALT], selectedAltitude: cleared level}}',
  },
  run({ procedure }, report) {
    for (const side of ['entry', 'exit'] as const) {
      const line = procedure[side];
      const missing = PARTS.filter(([, , stated]) => !stated(line));
      if (missing.length === 0) continue;
      const first = `${side}.${missing[0]![1]}`;
      report({
        at: { step: '', field: first },
        message: side,
        data: { missing: missing.map(([words]) => words).join(', ') },
        witness: absent(first),
        read: missing.map(([words]) => words),
      });
    }
  },
});
