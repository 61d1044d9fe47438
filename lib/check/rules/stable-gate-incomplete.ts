import { headOf } from '../corpus.ts';
import { defineRule } from '../rule.ts';
import { ELEMENT_NAMES, gateFigures, gatesOf, gateText, sinkIn, windowIn } from '../stable-gate.ts';
import { absent, inOrder, wordsOf } from '../witness.ts';

const FAILING = /\b(go(ing)?[- ]around|not stable)\b/i;
const WHOLE = new Set(['normal', 'engine-out', 'low-visibility']);

export const stableGateIncomplete = defineRule({
  id: 'stable-gate-incomplete',
  number: 69,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: ['approach', 'landing'],
  title: 'Stable gate incomplete',
  says: 'The gate of an approach lists path, speed window about VAPP, detent, gear, sink, thrust and checklist, and the words for failing it; window and sink are those of the policy, and every approach of the operator has the same.',
  why: 'What the gate does not list is not looked at, and an approach that fails it goes on.',
  source: { text: 'Flight Safety Foundation, elements of a stabilised approach', seen: true },
  needs: ['policy', 'others'],
  reads: ['cue', 'verb', 'object', 'value', 'checkSees', 'checkIfNot', 'note', 'before', 'branch'],
  messages: {
    'no-gate': 'No step judges whether the approach is stable: nobody will say that it is not.',
    missing: 'The gate does not look at {missing}: an approach that fails there is continued.',
    window: 'The gate gives the speed no window about VAPP: {wanted} is the policy.',
    'other-window': 'The gate allows {stated} about VAPP; the policy allows {wanted}.',
    sink: 'The gate allows {stated} ft/min; the policy allows {wanted} ft/min.',
    'no-words': 'The gate has no words for failing it: say "not stable, go around".',
    differs: 'The gate is {mine} here and {theirs} in {where}: one fleet has one gate.',
  },
  examples: {
    bad: '{phases: [approach], steps: [{cue: height <= 1 000 ft AAL, who: PM, verb: check, object: stable gate, value: "VAPP - 5 kt to VAPP + 10 kt; sink at most 1 000 ft/min; course and glide; planned detent and gear indicated; landing checklist complete", checkIfNot: PM "go around"}]}',
    good: '{phases: [approach], steps: [{cue: height <= 1 000 ft AAL, who: PM, verb: check, object: stable gate, value: "VAPP - 5 kt to VAPP + 10 kt; sink at most 1 000 ft/min; course and glide; planned detent and gear indicated; thrust above idle; landing checklist complete", checkIfNot: PM "go around"}]}',
  },
  run({ procedure, steps, policy, others }, report) {
    const { speedBelow, speedAbove, sink, height, heightVisual } = policy.gates.stable;
    const heights = [height, heightVisual];
    const wanted = `-${speedBelow} kt to +${speedAbove} kt`;
    const read = [speedBelow, speedAbove, sink];
    const gates = gatesOf(procedure, steps);
    const { phases } = procedure;
    if (gates.length === 0 && phases.includes('approach') && phases.includes('landing') && WHOLE.has(procedure.class)) {
      report({ at: { step: '', field: 'steps' }, message: 'no-gate', witness: absent('steps') });
    }
    const elsewhere = others.read('gate', 'stable').filter(({ of }) => of !== procedure.id);
    for (const gate of gates) {
      const step = steps.find((each) => each.id === gate.step)!;
      const at = { step: gate.step, field: 'value' };
      const witness = step.value === '' ? absent('value') : wordsOf('value', step.value);
      const missing = ELEMENT_NAMES.filter((name) => !gate.elements.includes(name));
      if (missing.length > 0) report({ at, message: 'missing', data: { missing: missing.join(', ') }, witness });
      const text = gateText(step);
      const window = windowIn(text);
      if (window === null && gate.elements.includes('speed')) {
        report({ at, message: 'window', data: { wanted }, witness, read });
      } else if (window !== null && (window[0] !== -speedBelow || window[1] !== speedAbove)) {
        const stated = `${window[0]} kt to +${window[1]} kt`;
        report({
          at,
          message: 'other-window',
          data: { stated, wanted },
          witness: inOrder(stated, wanted, stated),
          read,
        });
      }
      const stated = sinkIn(text);
      if (stated !== null && stated > sink) {
        const said = inOrder(`${stated} ft/min`, `${sink} ft/min`, `${stated} ft/min at the gate`);
        report({ at, message: 'sink', data: { stated, wanted: sink }, witness: said, read });
      }
      if (!FAILING.test([step.checkIfNot, ...step.branch.map((way) => `${way.when} ${way.to}`)].join(' '))) {
        report({ at: { ...at, field: 'checkIfNot' }, message: 'no-words', witness: absent('checkIfNot') });
      }
      // Whoever has the policy's own figures is the measure, not the exception.
      const mine = gateFigures(gate);
      const ours = heights.includes(gate.height ?? heights[0]!) && stated === sink && window !== null;
      const other = elsewhere.find(({ tells }) => gateFigures(tells) !== mine);
      if (!ours && missing.length === 0 && other !== undefined) {
        const theirs = gateFigures(other.tells);
        const said = inOrder(mine, theirs, `${gate.called}: ${mine}; ${other.tells.called}: ${theirs}`);
        const data = { mine, theirs, where: headOf(others, other.of).title };
        report({ at, message: 'differs', data, witness: said, read: [theirs] });
      }
    }
  },
});
