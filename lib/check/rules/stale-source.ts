import { NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

export const staleSource = defineRule({
  id: 'stale-source',
  number: 108,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Stale source',
  says: 'No cited source has a newer revision. It holds where the cited value has changed; where nobody has compared yet it is asked once for each source; where the value is the same it is advice. A temporary revision is exempt.',
  why: "A revision of April had not come into the operator's manual by January: the crew flew into ice with the older words.",
  source: { text: 'NTSB AAR-98/04; recommendations A-97-31 and A-98-89', seen: true },
  needs: ['governance'],
  reads: ['source'],
  messages: {
    changed: '{title} has {newer}: {value} is {now} there, and the crew would fly the older figure.',
    'not-compared': '{title} has {newer}, the text cites {cited}, and nobody has compared them: any figure may be old.',
    same: '{title} has {newer}, the text cites {cited}: what is used is the same in both, so only the citation is old.',
  },
  examples: {
    bad: '{steps: [{id: a, cue: speed <= 195 kt, who: PM, verb: select, object: flap lever, value: F6, source: TN-182 data A}], governance: {sources: [{id: data, title: TN-182 data, cited: A, newer: {revision: B, temporary: false}, uses: [{step: a, value: VFE F6, now: changed, newValue: 190 kt}]}]}}',
    good: '{steps: [{id: a, cue: speed <= 190 kt, who: PM, verb: select, object: flap lever, value: F6, source: TN-182 data B}], governance: {sources: [{id: data, title: TN-182 data, cited: B, newer: null, uses: [{step: a, value: VFE F6, now: same, newValue: ""}]}]}}',
  },
  run({ governance, steps, unasked }, report) {
    if (governance.sources === null) return unasked(NOT_KNOWN.sources, WHOLE);
    const ids = new Set(steps.map((step) => step.id as string));
    for (const { id, title, cited, newer, uses } of governance.sources) {
      if (newer === null || newer.temporary) continue;
      const place = (step: string) => (ids.has(step) ? { step, field: 'source' } : WHOLE);
      const witness = inOrder(cited, newer.revision, `cited: ${cited || 'no revision'}; received: ${newer.revision}`);
      const told = { title, newer: `revision ${newer.revision}`, cited: cited === '' ? 'none' : `revision ${cited}` };
      const ask = { cause: `stale-source ${id}`, read: [id, cited, newer.revision] };
      const changed = uses.filter((use) => use.now === 'changed');
      for (const { step, value, newValue } of changed) {
        const data = { ...told, value, now: newValue || 'another' };
        report({ at: place(step), message: 'changed', data, witness, ...ask, read: [...ask.read, value, newValue] });
      }
      const open = uses.find((use) => use.now === 'not compared');
      const same = uses.find((use) => use.now === 'same');
      if (open !== undefined) {
        report({ at: place(open.step), message: 'not-compared', data: told, witness, ...ask, severity: 'ANSWER' });
      } else if (changed.length === 0 && same !== undefined) {
        report({ at: place(same.step), message: 'same', data: told, witness, ...ask, severity: 'ADVICE' });
      }
    }
  },
});
