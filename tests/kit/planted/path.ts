// Defects of altitudes, gates and the vertical path, and of what documents say of them.
import { governanceOn } from '../../../lib/check/governance.ts';
import { toldBy } from '../../../lib/check/told.ts';
import type { Library } from '../../../lib/library/library.ts';
import { procedureWith, type StepParts } from '../../../lib/procedure/build.ts';
import type { Procedure, ProcedureId } from '../../../lib/procedure/procedure.ts';
import { atSteps, type Base, first, firstIn, has, isHand, last, type Mutant, one, type Plants } from './plant.ts';
import { besideCopies } from './wording.ts';

const call = (cue: string): StepParts => ({
  cue,
  who: 'PM',
  verb: 'call',
  object: 'altitude',
  say: 'passing',
  replyBy: 'PF',
  reply: 'checked',
});
const setAltitude = (value: string, more: StepParts = {}): StepParts => ({
  cue: 'event "cleared approach"',
  who: 'PF',
  verb: 'set',
  object: 'altitude selector',
  value,
  ...more,
});
const states = (object: string, value: string, only = ''): StepParts => ({
  cue: 'then',
  who: 'PM',
  verb: 'check',
  object,
  value,
  only,
});
const bound = ({ procedure }: Base, ...codes: readonly string[]): boolean =>
  codes.some((code) => procedure.title.endsWith(code));

const beside = ({ facts }: Base, ...steps: readonly StepParts[]) => {
  const card: Procedure = { ...procedureWith({ title: 'Fleet card', steps }), id: 'pr_fleetcard' as ProcedureId };
  return { others: [...(facts.others ?? []), toldBy(card)] };
};
const withItem = (library: Library): Library => ({
  ...library,
  checklists: library.checklists.map((list) => ({
    ...list,
    items: [
      ...list.items,
      { challenge: 'Pressurisation', response: 'set to the landing elevation', by: 'PM' as const, steps: [] },
    ],
  })),
});

/** One clause of the gate left out. */
const gateWithout = (base: Base, word: RegExp, says: string): readonly Mutant[] =>
  atSteps(
    base,
    ({ object, value }) => /\bstable gate\b/.test(object) && word.test(value),
    ({ value }) => ({
      value: value
        .split('; ')
        .filter((clause) => !word.test(clause))
        .join('; '),
    }),
    says,
  );

export const PATH: Plants = {
  'gates-out-of-order': ({ procedure }) => [
    ...one(
      '3 000 ft before 1 500 ft',
      first(procedure, call('height >= 3 000 ft AAL'), call('height >= 1 500 ft AAL')),
    ),
    ...one('500 ft before 1 000 ft', last(procedure, call('height <= 500 ft AAL'), call('height <= 1 000 ft AAL'))),
  ],
  'reduce-and-accelerate-order': (base) => {
    const height = (object: string, value: string): StepParts => ({
      cue: 'then',
      who: 'PM',
      verb: 'set',
      object,
      value,
    });
    if (!has(base, 'take-off') || base.procedure.class === 'engine-out') return [];
    const near = bound(base, 'QHLM', 'QKAR')
      ? one(
          'as close-in, the wrong way round',
          first(
            base.procedure,
            height('acceleration height', '1 000 ft AAL'),
            height('thrust reduction height', '1 500 ft AAL'),
          ),
        )
      : [];
    return [
      ...near,
      ...one('too low', first(base.procedure, height('thrust reduction height', '600 ft AAL'))),
      ...one('too late', first(base.procedure, height('acceleration height', '4 000 ft AAL'))),
    ];
  },
  'too-low-to-touch': (base) =>
    !has(base, 'take-off', 'go-around')
      ? []
      : one(
          'HEADING at 200 ft',
          first(base.procedure, {
            cue: 'height >= 200 ft AAL',
            who: 'PM',
            verb: 'set',
            object: 'heading selector',
            value: 'ordered heading',
          }),
        ),
  'speed-restrictions-fight': (base) =>
    atSteps(base, isHand, () => ({ cue: 'speed >= 200 kt and speed <= 150 kt' }), 'leaves no speed'),
  'stable-gate-incomplete': (base) => [
    ...gateWithout(base, /\bthrust\b/, 'does not look at thrust'),
    ...gateWithout(base, /\bsink\b/, 'does not look at the sink'),
    ...gateWithout(base, /\bchecklist\b/, 'does not look at the list'),
  ],
  'gate-vs-minima': (base) =>
    atSteps(
      base,
      ({ object }) => /\bstable gate\b/.test(object),
      () => ({ cue: 'height <= 150 ft AAL' }),
      'lies below the minima',
    ),
  'nobody-watches-the-path': (base) => {
    if (!has(base, 'approach') || has(base, 'go-around')) return [];
    const bare = base.procedure.steps.map((step) => ({
      ...step,
      checkSees: step.checkSees.replace(/within 100 ft of the card/, 'as on the card'),
      // A descent at a rate instead of the signal of the runway.
      expect: step.expect.vertical === 'GLIDE' ? { ...step.expect, vertical: 'RATE-DN' } : step.expect,
    }));
    return one('a rate, and no feet that are too many', { ...base.procedure, steps: bare });
  },
  'cold-altitudes': (base) => {
    const cold = (more: Partial<Procedure>): Procedure => ({ ...base.procedure, class: 'cold-weather', ...more });
    if (!has(base, 'approach', 'landing') || !bound(base, 'QHLM', 'QSTR', 'QVDS', 'QAMB', 'QKAR')) return [];
    return one('copied into the cold', cold({ title: base.procedure.title.replace(/ at (\w+)$/, ' in −28 °C at $1') }));
  },
  'altimeter-change': (base) => [
    ...atSteps(
      base,
      ({ object }) => /altimeter setting/.test(object),
      () => ({ who: 'PM' }),
      'is set on one side',
    ),
    ...(has(base, 'climb', 'initial climb') && !base.procedure.steps.some(({ object }) => /altimeter/.test(object))
      ? one('the transition is passed', last(base.procedure, call('altitude >= transition altitude')))
      : []),
  ],
  'terrain-floor': (base) => {
    if (!has(base, 'descent', 'approach', 'holding') || base.procedure.phases.includes('go-around')) return [];
    const away = {
      ...base.procedure,
      entry: { ...base.procedure.entry, lateral: base.other ? ['WINGS'] : ['HEADING'] },
    };
    const msa = { ...away, entry: { ...away.entry, also: `${away.entry.also} MSA 9 000 ft MSL.` } };
    return [
      ...one('under the minimum that is stated', first(msa, setAltitude('6 000 ft MSL'))),
      ...one('under the minimum of the card', first(away, setAltitude('900 ft MSL', { only: 'at QVDS' }))),
    ];
  },
  'engine-out-path': (base) => [
    ...(base.procedure.class === 'engine-out'
      ? atSteps(
          base,
          (step) => /engine-out acceleration altitude/.test(step.cue),
          (step) => firstIn(step, ['cue'], /engine-out acceleration altitude/, 'acceleration altitude'),
          'goes by the altitude for all engines',
        )
      : []),
    ...(has(base, 'take-off')
      ? one(
          '1 300 ft AAL at QVDS',
          first(base.procedure, {
            ...states('card', 'engine-out acceleration altitude 1 300 ft AAL'),
            only: 'at QVDS',
          }),
        )
      : []),
  ],
  'wind-limits-agree': (base) => [
    ...one('a tail wind that was not shown', first(base.procedure, states('tailwind', 'at most 20 kt'))),
    ...one(
      'another one on the fleet card',
      first(base.procedure, states('tailwind', 'at most 7 kt')),
      beside(base, states('tailwind', 'at most 9 kt')),
    ),
  ],
  'one-fleet-two-numbers': (base) => [
    ...one(
      'autobrake',
      first(base.procedure, states('autobrake selector', 'low', 'code 3')),
      beside(base, states('autobrake selector', 'medium', 'code 3')),
    ),
    ...one(
      'tail wind',
      first(base.procedure, states('tailwind', 'at most 7 kt')),
      beside(base, states('tailwind', 'at most 9 kt')),
    ),
  ],
  'sop-and-list-disagree': ({ procedure, facts }) =>
    one(
      'an item that no step does',
      last(procedure, { cue: 'then', who: 'PM', verb: 'read', object: 'landing checklist' }),
      { library: withItem(facts.library!) },
    ),
  'odd-one-out': (base) => [
    ...besideCopies(base, 3, () => ({ value: 'another value' }), 'has another value than three copies'),
    ...besideCopies(base, 3, ({ who }) => ({ who: who === 'PM' ? 'PF' : 'PM' }), 'has another actor than three copies'),
  ],
  'effectivity-hole-or-overlap': ({ procedure, facts }) => {
    const known = { governance: governanceOn('2026-11-25') };
    const only = (standards: readonly string[]): Procedure => ({
      ...procedure,
      effectivity: { ...procedure.effectivity, standards },
    });
    const twice = toldBy({ ...procedure, id: 'pr_twice' as ProcedureId });
    return [
      ...one('nothing for standard B', only(['A']), known),
      ...one('two texts for all', procedure, { ...known, others: [...(facts.others ?? []), twice] }),
    ];
  },
  'engine-out-twin-missing': ({ procedure, facts, ...base }) =>
    !has({ procedure, facts, ...base }, 'take-off', 'approach', 'go-around') || procedure.class === 'engine-out'
      ? []
      : one('no text for one engine', procedure, { others: [], library: { ...facts.library!, terms: [] } }),
  'supplementary-overrides-silently': ({ procedure }) => {
    const later: StepParts = { cue: 'then', who: 'PM', verb: 'select', object: 'flap lever', value: 'later' };
    return [
      ...one('flap later', first({ ...procedure, class: 'cold-weather' }, later)),
      ...one('at the end too', last({ ...procedure, class: 'supplementary normal' }, later)),
    ];
  },
  'dead-link': (base) => {
    const prefix = base.procedure.steps[0]?.label.split('-')[0];
    return [
      ...atSteps(
        base,
        ({ checkIfNot }) => checkIfNot !== '',
        () => ({ checkIfNot: 'see 4.3' }),
        'names a place by its number',
      ),
      ...atSteps(
        base,
        ({ checkIfNot }) => checkIfNot !== '',
        () => ({ checkIfNot: `${prefix}-99 again` }),
        'sends to no step',
      ),
    ];
  },
};
