// Defects of structure and ownership: who does what, on which cue, and where it goes on.
import type { Library } from '../../../lib/library/library.ts';
import { allSteps, type Procedure, type Step } from '../../../lib/procedure/procedure.ts';
import { atSteps, changed, first, has, isFlap, isGear, isHand, last, type Mutant, one, type Plants } from './plant.ts';

const isShared = (step: Step): boolean => isFlap(step) || isGear(step);
const prefixOf = (procedure: Procedure): string => allSteps(procedure)[0]?.label.split('-')[0] ?? 'XX';

function lists(
  library: Library,
  change: (list: Library['checklists'][number]) => Library['checklists'][number],
): Library {
  return { ...library, checklists: library.checklists.map(change) };
}
const filler = Array.from({ length: 12 }, (_, index) => ({
  challenge: `Item ${'abcdefghijkl'[index]}`,
  response: 'seen by both pilots',
  by: 'PM' as const,
  steps: [],
}));

/** Each step and the one before it in the main line. */
function pairs(procedure: Procedure, fits: (step: Step, before: Step) => boolean): readonly (readonly [Step, Step])[] {
  const all = procedure.steps;
  return all.flatMap((step, index) => {
    const before = all[index - 1];
    return before !== undefined && fits(step, before) ? [[step, before] as const] : [];
  });
}
const inPairs = (
  procedure: Procedure,
  fits: (step: Step, before: Step) => boolean,
  parts: (step: Step, before: Step) => readonly (readonly [Step, Partial<Step>])[],
  says: string,
): readonly Mutant[] =>
  pairs(procedure, fits)
    .slice(0, 2)
    .map(([step, before]) => ({
      says: `${step.label} ${says}`,
      procedure: parts(step, before).reduce((all, [which, change]) => changed(all, which, change), procedure),
    }));

export const STRUCTURE: Plants = {
  'nobody-does-it': (base) => atSteps(base, isHand, () => ({ who: '' }), 'has no actor'),
  'two-owners': (base) => atSteps(base, isShared, () => ({ who: 'each' }), 'has two hands'),
  'doer-checks-own-work': (base) =>
    atSteps(
      base,
      ({ flags, who }) => flags.includes('critical') && who !== '',
      ({ who }) => ({ checkBy: who }),
      'is verified by its doer',
    ),
  'call-without-answer': (base) =>
    atSteps(
      base,
      ({ verb, say, reply, orderWords }) =>
        verb === 'call' && say !== '' && reply !== '' && !say.startsWith('(') && orderWords === '',
      () => ({ reply: '', replyBy: '', replyAct: '' }),
      'is answered by silence',
    ),
  'empty-reply': (base) =>
    atSteps(
      base,
      (step) => isShared(step) && step.say !== '',
      () => ({ say: 'set' }),
      'is answered "set"',
    ),
  'no-trigger': (base) =>
    atSteps(
      base,
      ({ cue }) => cue !== '',
      () => ({ cue: '' }),
      'has no cue',
    ),
  'invisible-trigger': (base) =>
    atSteps(
      base,
      (step) => step.verb === 'call' || step.verb === 'read',
      () => ({ cue: 'event "flaps start to move"' }),
      'waits for what is not shown',
    ),
  'two-triggers-one-moment': ({ procedure }) =>
    inPairs(
      procedure,
      (step, before) =>
        step.who === before.who &&
        step.who !== '' &&
        !/^(then|after)/.test(before.cue) &&
        before.only === '' &&
        step.only === '',
      (step, before) => [[step, { cue: before.cue }]],
      'begins when the step before begins',
    ),
  'branch-gap-or-overlap': (base) => {
    const ways = (a: string, b: string, step: Step) => ({
      branch: [
        { when: a, to: step.label },
        { when: b, to: 'go-around' },
      ],
    });
    const decides = ({ verb }: Step): boolean => verb === 'check' || verb === 'read';
    return [
      ...atSteps(base, decides, (step) => ways('weight > 60 t', 'weight < 60 t', step), 'leaves 60 t open'),
      ...atSteps(base, decides, (step) => ways('weight >= 55 t', 'weight <= 65 t', step), 'has two ways from 55 t'),
    ];
  },
  'branch-goes-nowhere': (base) =>
    atSteps(
      base,
      ({ branch }) => branch.length === 0,
      () => ({ branch: [{ when: 'judged "needed"', to: `${prefixOf(base.procedure)}-99` }] }),
      'sends to a step that is not there',
    ),
  'nowhere-to-resume': ({ procedure }) =>
    inPairs(
      procedure,
      (step, before) => !step.flags.includes('hold') && !before.flags.includes('hold'),
      (step, before) =>
        [step, before].map((each) => [each, { flags: [...each.flags, 'interruptible'], note: '' }] as const),
      'and the one before may be interrupted',
    ),
  'deferred-and-forgotten': ({ procedure }) => [
    ...one(
      'the trim may be delayed',
      last(procedure, {
        cue: 'then',
        who: 'PM',
        verb: 'select',
        object: 'trim wheel',
        value: 'may be delayed in icing',
      }),
    ),
    ...one(
      'the trim is put off',
      first(procedure, { cue: 'then', who: 'PM', verb: 'set', object: 'trim wheel', value: 'deferred until later' }),
    ),
  ],
  'killer-item-too-far-back': ({ procedure, facts, ...base }) => {
    const library = facts.library!;
    if (!has({ procedure, facts, ...base }, 'approach', 'landing')) return [];
    const without = lists(library, (list) => ({
      ...list,
      items: list.items.filter(({ challenge }) => challenge !== 'Flap'),
    }));
    const behind = lists(library, (list) => {
      const flap = list.items.filter(({ challenge }) => challenge === 'Flap');
      return { ...list, items: [...list.items.filter(({ challenge }) => challenge !== 'Flap'), ...flap] };
    });
    return [
      ...one('no item for the flap', procedure, { library: without }),
      ...one('the flap is the last item', procedure, { library: behind }),
    ];
  },
  'list-too-long': ({ procedure, facts }) => {
    const long = lists(facts.library!, (list) => ({ ...list, items: [...list.items, ...filler] }));
    const reads = first(procedure, { cue: 'then', who: 'PM', verb: 'read', object: 'landing checklist' });
    return [...one('twelve items more', reads, { library: long })];
  },
  'action-hidden-in-note': (base) =>
    atSteps(
      base,
      () => true,
      () => ({ before: [{ kind: 'note', text: 'Select both pumps on.' }] }),
      'hides an action in a note',
    ),
  'if-comes-last': (base) =>
    atSteps(
      base,
      (step) => isHand(step) && step.value !== '',
      ({ value }) => ({ value: `${value} if fire persists` }),
      'ends with its condition',
    ),
  'one-hand-irreversible': ({ procedure }) => {
    const off = { who: 'PM', verb: 'set', object: 'fuel lever', value: 'OFF' } as const;
    return [
      ...one('a fuel lever, alone', first(procedure, { ...off, cue: 'event "fire indicated"' })),
      ...one('a fire handle, alone', last(procedure, { ...off, object: 'fire handle', value: 'pulled', cue: 'then' })),
    ];
  },
  'memory-not-in-list': ({ procedure, facts }) => {
    const library = facts.library!;
    const [a, b] = procedure.steps.filter(({ label }) => label !== '');
    if (a === undefined || b === undefined) return [];
    const memory = [a, b].reduce((all, step) => changed(all, step, { flags: [...step.flags, 'memory'] }), procedure);
    const item = (step: Step) => ({
      challenge: step.object,
      response: step.value || step.say,
      by: 'PM' as const,
      steps: [step.label],
    });
    const list = (items: readonly ReturnType<typeof item>[]) => ({
      library: {
        ...library,
        checklists: [
          ...library.checklists,
          {
            id: 'planted',
            title: 'Planted',
            calledBy: 'PF',
            readBy: 'PM',
            trigger: '',
            method: 'read-and-do',
            complete: 'planted list complete',
            items,
          } as const,
        ],
      },
    });
    return [
      ...one('the first memory item is not restated', memory, list([item(b)])),
      ...one('the other way round', memory, list([item(b), item(a)])),
    ];
  },
  'entry-exit-state-missing': ({ procedure }) => [
    ...one('no flap at the beginning', { ...procedure, entry: { ...procedure.entry, flaps: [] } }),
    ...one('nothing said of armed words at the end', { ...procedure, exit: { ...procedure.exit, armed: null } }),
  ],
};
