import type { Flag } from '../../procedure/procedure.ts';
import { type Difference, NOT_KNOWN, WHOLE } from '../governance.ts';
import { defineRule } from '../rule.ts';
import { inOrder } from '../witness.ts';

const HELD: readonly Flag[] = ['critical', 'memory'];

export const differsFromManufacturer = defineRule({
  id: 'differs-from-manufacturer',
  number: 107,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Differs from the manufacturer',
  says: 'Where order, value or a step differs from the source that is cited, the difference register has a row with reason, risk note and who accepted it. It holds for critical, memory and limit items; for others it is asked once for each family.',
  why: 'Sequences were changed in good faith without a look at what the other order was for: a mode check moved down a go-around list, ice boots used later than the revision said.',
  source: { text: 'ATSB AO-2007-044; TSB A15H0002; NTSB AAR-98/04', seen: true },
  needs: ['governance'],
  reads: ['flags', 'family'],
  messages: {
    unregistered: '{source} says "{theirs}" here, and no row of the difference register says why we do otherwise.',
    'thin-row': 'The row of the difference register lacks {lacks}: nobody has taken the difference on.',
    family: '{source} says "{theirs}" in this family of steps: nothing says why we do otherwise.',
  },
  examples: {
    bad: '{steps: [{id: a, cue: then, who: PM, verb: read, object: mode line, flags: [critical]}], governance: {differences: {found: [{step: a, what: order, source: TN-182 data, theirs: modes are read before the gear, limit: false}], register: []}}}',
    good: '{steps: [{id: a, cue: then, who: PM, verb: read, object: mode line, flags: [critical]}], governance: {differences: {found: [{step: a, what: order, source: TN-182 data, theirs: modes are read before the gear, limit: false}], register: [{step: a, family: "", reason: the gear call is heard better first, risk: modes read 2 s later, acceptedBy: p3}]}}}',
  },
  run({ governance, steps, unasked }, report) {
    if (governance.differences === null) return unasked(NOT_KNOWN.differences, WHOLE);
    const { found, register } = governance.differences;
    const asked = new Set<string>();
    for (const difference of found) {
      const step = steps.find((one) => one.id === difference.step);
      const family = step?.family ?? '';
      const row = register.find(
        (one) => (one.step !== '' && one.step === difference.step) || (one.family !== '' && one.family === family),
      );
      const lacks = row === undefined ? [] : lackOf(row);
      if (row !== undefined && lacks.length === 0) continue;
      const at = step === undefined ? WHOLE : { step: step.id as string, field: fieldOf(difference) };
      const { source, theirs } = difference;
      const data = { source, theirs, lacks: lacks.join(' and ') };
      const witness = inOrder(difference.step, difference.step, `${difference.what}: ${source} says "${theirs}"`);
      const read = [source, theirs, ...lacks];
      const held = difference.limit || step === undefined || HELD.some((flag) => step.flags.includes(flag));
      if (held) {
        report({ at, message: row === undefined ? 'unregistered' : 'thin-row', data, witness, read });
        continue;
      }
      const key = family || difference.step;
      if (asked.has(key)) continue;
      asked.add(key);
      const message = row === undefined ? 'family' : 'thin-row';
      report({ at, message, data, witness, read, severity: 'ANSWER', cause: `differs ${key}` });
    }
  },
});

const fieldOf = ({ what }: Difference): string => (what === 'value' ? 'value' : 'object');

const lackOf = (row: { readonly reason: string; readonly risk: string; readonly acceptedBy: string }): string[] => [
  ...(row.reason.trim() === '' ? ['the reason'] : []),
  ...(row.risk.trim() === '' ? ['the risk note'] : []),
  ...(row.acceptedBy === '' ? ['who accepted it'] : []),
];
