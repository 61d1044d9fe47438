import { allSteps } from '../../procedure/procedure.ts';
import { linksIn } from '../link-text.ts';
import { targetOf } from '../links.ts';
import { callsList } from '../list-calls.ts';
import { defineRule } from '../rule.ts';
import { TEXT_FIELDS, textsOf } from '../texts.ts';
import { prefixOf } from '../told.ts';
import { wordsOf } from '../witness.ts';

export const deadLink = defineRule({
  id: 'dead-link',
  number: 105,
  severity: 'STOP',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Dead link',
  says: 'What a text refers to exists: steps and branches by label, procedures and lists by name, cards and sources. A text that is kept elsewhere is known by its entry among the terms. A section or page number is no link: it names another topic after the next revision.',
  why: 'Whoever is sent to a place that is not there stands nowhere, with less time than before.',
  source: { text: 'House catalogue of checks: references', seen: false },
  needs: ['library', 'others'],
  reads: [...TEXT_FIELDS, 'branch'],
  messages: {
    label: '{name} exists in no procedure: whoever is sent there stands nowhere.',
    name: 'There is no procedure or list "{name}", and no term says where it is kept.',
    position:
      '"{name}" names a place by its number, which is another topic after the next revision: name the step or the list.',
  },
  examples: {
    bad: '[{label: XX-01, cue: then, who: PM, verb: check, object: ice protection, checkIfNot: see 4.3}]',
    good: '[{label: XX-01, cue: then, who: PM, verb: check, object: ice protection, checkIfNot: XX-01}]',
  },
  run({ procedure, steps, library, others }, report) {
    const labels = new Set(
      [...allSteps(procedure), ...procedure.branches].map(({ label }) => label).filter((label) => label !== ''),
    );
    const prefixes = new Set([...labels].map(prefixOf));
    const lives = (label: string): boolean => labels.has(label) || others.read('label', label).length > 0;
    // GO-AROUND and RATE-UP look like labels: only what begins like one is one.
    const isLabel = (label: string): boolean =>
      prefixes.has(prefixOf(label)) || others.read('label', prefixOf(label)).length > 0;
    const dead = (name: string): boolean =>
      targetOf(name, procedure, library, others) === null && !linksIn(name).labels.some(lives);
    const say = (
      at: { step: string; field: string },
      message: 'label' | 'name' | 'position',
      name: string,
      text: string,
    ) => {
      const from = Math.max(0, text.indexOf(name));
      const witness = wordsOf(at.field, text, from, from + name.length);
      report({ at, message, data: { name }, witness, cause: `dead-link ${name}` });
    };

    for (const name of procedure.leavesTo) {
      if (dead(name)) say({ step: '', field: 'leavesTo' }, 'name', name, name);
    }
    const joins = procedure.branches.map((branch) => ({
      at: { step: (branch.steps.at(-1)?.id ?? '') as string, field: 'joins' },
      text: branch.joins,
    }));
    for (const { at, text } of [...textsOf(procedure, steps), ...joins]) {
      const { labels: named, names, positions } = linksIn(text);
      for (const label of at.field === 'cue' ? [] : named) {
        if (isLabel(label) && !lives(label)) say(at, 'label', label, text);
      }
      for (const name of names) if (dead(name)) say(at, 'name', name, text);
      for (const name of positions) say(at, 'position', name, text);
    }
    for (const step of steps) {
      for (const { to } of step.branch) {
        if (to.trim() !== '' && !to.includes('"') && dead(to)) say({ step: step.id, field: 'branch' }, 'name', to, to);
      }
      const { object } = step;
      if (callsList(step) && !object.includes('"') && !lives(object) && dead(object)) {
        say({ step: step.id, field: 'object' }, 'name', object, object);
      }
    }
  },
});
