import { headOf } from '../corpus.ts';
import { members } from '../family.ts';
import { targetOf } from '../links.ts';
import { plain } from '../names.ts';
import { defineRule } from '../rule.ts';
import { modesAgree } from '../sister.ts';
import { manoeuvresOf, twinOf } from '../twin.ts';
import { absent, inOrder } from '../witness.ts';

const TWIN = 'engine-out';

export const engineOutTwinMissing = defineRule({
  id: 'engine-out-twin-missing',
  number: 103,
  severity: 'ANSWER',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Engine-out twin missing',
  says: 'Take-off, go-around, approach, landing and drift-down each have an engine-out counterpart with the same skeleton: modes read, gear and flap moved, climb called. What differs is marked by the rationale of the engine-out text or the reason of the step. No other manoeuvre is asked for one.',
  why: 'The day the engine fails is the worst day to find that nobody wrote it down, or that it was copied unread.',
  source: { text: 'House catalogue of checks: engine-out counterparts', seen: false },
  needs: ['library', 'others'],
  reads: ['cue', 'who', 'verb', 'object', 'value', 'expect', 'flags', 'family', 'why'],
  messages: {
    missing: 'The {manoeuvre} has no engine-out counterpart: with one engine the crew makes it up.',
    skeleton:
      'The engine-out text has no {act}, which "{normal}" has: put it in, or say in the rationale why it is left out.',
    unmarked: 'This step differs from {theirs} of "{normal}" in {what}, and neither it nor the rationale says why.',
  },
  examples: {
    bad: '{title: Go-around, class: normal, phases: [go-around]}',
    good: '{title: Go-around, class: normal, phases: [go-around], others: [{title: Engine-out go-around, class: engine-out, phases: [go-around]}]}',
  },
  run({ procedure, steps, library, others, unasked }, report) {
    const manoeuvres = manoeuvresOf(procedure);
    const twins = manoeuvres
      .flatMap((each) => others.read('twin', each))
      .filter(({ of, tells }) => of !== procedure.id && tells.type === procedure.effectivity.type);
    if (procedure.class === 'normal') {
      if (manoeuvres.length === 0 || twins.some(({ tells }) => tells.class === TWIN)) return;
      const at = { step: '', field: 'leavesTo' };
      const kept = procedure.leavesTo.find(
        (name) => /\bengine-out\b/i.test(name) && targetOf(name, procedure, library, others) !== null,
      );
      if (kept !== undefined) unasked(`the ${kept} is kept elsewhere, its text was not given`, at);
      else
        report({ at, message: 'missing', data: { manoeuvre: manoeuvres.join(' and ') }, witness: absent('leavesTo') });
    }
    const normal = twins.filter(({ tells }) => tells.class === 'normal');
    if (procedure.class !== TWIN || normal.length === 0) return;
    const own = twinOf(procedure, steps);
    const { title } = normal[0]!.tells;
    const every = normal[0]!.tells.skeleton.filter((act) => normal.every(({ tells }) => tells.skeleton.includes(act)));
    const rationale = plain(procedure.rationale);
    for (const act of every) {
      const [word] = act.split(' ');
      if (own.skeleton.includes(act) || rationale.includes(word!)) continue;
      const witness = inOrder(title, procedure.title, `"${title}" has a ${act}, "${procedure.title}" has none`);
      const at = { step: '', field: 'steps' };
      report({ at, message: 'skeleton', data: { act, normal: title }, witness, read: [act] });
    }
    // A rationale of its own speaks for all differences; one that came along with the copy speaks for none.
    if (rationale !== '' && normal.every(({ tells }) => tells.rationale !== rationale)) return;
    const ids = new Set(normal.map(({ of }) => of));
    for (const { sister, heard: all } of members(procedure, steps, others)) {
      const normalOne = all.find(({ of }) => ids.has(of));
      if (normalOne === undefined || sister.reason) continue;
      const { of, tells: theirs } = normalOne;
      const differing = (['trigger', 'who', 'verb', 'value'] as const).filter(
        (field) => sister[field] !== theirs[field],
      );
      const what = [...differing, ...(modesAgree(sister.modes, theirs.modes) ? [] : ['modes'])].join(', ');
      if (what === '') continue;
      const data = { theirs: theirs.called, normal: headOf(others, of).title, what };
      const witness = inOrder(sister.called, theirs.called, `${sister.called} and ${theirs.called} differ in ${what}`);
      const at = { step: sister.step, field: 'why' };
      report({ at, message: 'unmarked', data, witness, read: [JSON.stringify(theirs)] });
    }
  },
});
