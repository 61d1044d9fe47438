import { NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

export const oldCopyStillShown = defineRule({
  id: 'old-copy-still-shown',
  number: 116,
  severity: 'STOP',
  kind: 'T',
  stage: 'in force',
  phases: 'all',
  title: 'Old copy still shown',
  says: 'No device shows as current what is not the issue in force. In the air nothing is exchanged: there the reader says that a newer one waits.',
  why: 'Crews must have the text that holds, and know when it changed; an old page looks as good as a new one.',
  source: { text: 'EASA ORO.MLR.100', seen: true },
  needs: ['governance'],
  reads: [],
  messages: {
    old: '{device} ({tail}) shows issue {shown} as current, last synchronised {day}; in force is issue {current}.',
    other: '{device} ({tail}) shows issue {current} with other content than was signed: it must not be flown from.',
  },
  examples: {
    bad: '{governance: {devices: {current: {issue: 9, hash: b}, list: [{name: tablet 4, tail: Q-SKA, shows: {issue: 8, hash: a}, asCurrent: true, synchronised: 2026-11-22, airborne: false}]}}}',
    good: '{governance: {devices: {current: {issue: 9, hash: b}, list: [{name: tablet 4, tail: Q-SKA, shows: {issue: 8, hash: a}, asCurrent: false, synchronised: 2026-11-22, airborne: false}]}}}',
  },
  run({ governance: { devices }, unasked }, report) {
    if (devices === null) return unasked(NOT_KNOWN.devices, WHOLE);
    const { current, list } = devices;
    for (const { name, tail, shows, asCurrent, synchronised, airborne } of list) {
      if (!asCurrent || shows.hash === current.hash) continue;
      const same = shows.issue === current.issue;
      // The crew finishes the flight with the issue that it took off with; other content is wrong anywhere.
      if (airborne && !same) continue;
      const data = { device: name, tail, shown: shows.issue, current: current.issue, day: synchronised };
      const says = `${name}: issue ${shows.issue}, ${shows.hash}; in force: issue ${current.issue}, ${current.hash}`;
      const witness = inOrder(shows.hash, current.hash, says);
      const read = [name, shows.hash, current.hash];
      report({ at: WHOLE, message: same ? 'other' : 'old', data, witness, cause: `device ${name}`, read });
    }
  },
});
