// Which climb gradients a procedure has to have, from its phases, its detents and the cards it is bound to, less what its
// weight limit already answers for.
import type { Segment } from '../aircraft/climb.ts';
import type { Sheet } from '../aircraft/sheet.ts';
import type { Aerodrome } from '../library/library.ts';
import { cardsOf, missedGradients, obstacleOf } from './cards.ts';
import { kept } from './kept.ts';
import type { RuleContext } from './rule.ts';

export type Asked = {
  readonly segment: Segment;
  readonly name: string;
  readonly detent: string;
  /** Per cent as it is asked for, and the same gross. */
  readonly least: number;
  readonly net: boolean;
  readonly gross: number;
  readonly obstacle: number | null;
  readonly takeOff: boolean;
  readonly place: Aerodrome | null;
  /** kg. */
  readonly heaviest: number;
  /** Asked only up to the weight that an earlier question leaves. */
  readonly after: boolean;
};

const COVERS = {
  takeOff: /\b(climb|gradient|segment|take-off calculation)\b/i,
  obstacle: /\b(obstacle|take-off calculation|net path)\b/i,
  approach: /\b(approach[- ]climb|landing calculation)\b/i,
  landing: /\b(landing[- ]climb|approach[- ]climb|landing calculation)\b/i,
  missed: /\b(missed[- ]approach gradient|landing calculation)\b/i,
} as const;

const TONNES =
  /\b(?:([A-Z]{1,2}\d{1,2}|[A-Z]{2,})\b(?:,? (?:limited to|at most|up to|to|not above|maximum))?[:]? ?(?:≤|<=)? ?)?(\d{2,3}(?:\.\d+)?) ?t\b/g;

type Limits = { readonly all: number | null; readonly by: ReadonlyMap<string, number> };
const limitsIn = kept((text: string): Limits => {
  const found = [...text.matchAll(TONNES)].map((match) => [match[1] ?? '', Number(match[2]) * 1000] as const);
  const all = found.filter(([detent]) => detent === '').map(([, kg]) => kg);
  return { all: all.length === 0 ? null : Math.min(...all), by: new Map(found.filter(([detent]) => detent !== '')) };
});

const isOut = ({ procedure }: RuleContext): boolean =>
  procedure.class === 'engine-out' || /\bengine[- ]out\b/i.test(procedure.title);

export function askedClimbs(context: RuleContext): readonly Asked[] {
  const { procedure, library, sheet } = context;
  const cards = cardsOf(library, procedure);
  const places = cards.length > 0 ? cards : [null];
  const take = procedure.phases.includes('take-off');
  const down = procedure.phases.some((phase) => ['approach', 'landing', 'go-around'].includes(phase));
  return places.flatMap((place) => [
    ...(take ? takeOff(context, place) : []),
    ...(down && !take ? goAround(context, place, sheet) : []),
  ]);
}

/** The weight up to which nothing more is asked of a detent; null where the text leaves the matter to a calculation. */
function heaviestOf(context: RuleContext, detent: string, covers: RegExp, most: number): number | null {
  const { weightLimit } = context.procedure;
  const { all, by } = limitsIn(weightLimit);
  const stated = by.get(detent) ?? all;
  if (stated === null && covers.test(weightLimit)) return null;
  return Math.min(stated ?? most, most);
}

function takeOff(context: RuleContext, place: Aerodrome | null): readonly Asked[] {
  const { procedure, sheet, policy } = context;
  const { second, netReduction } = policy.climb;
  const named = procedure.envelope.detents.length > 0 ? procedure.envelope.detents : procedure.entry.flaps;
  const detents = sheet.detents.filter(({ name, use }) => named.includes(name) && use.includes('take-off'));
  const obstacle = place === null ? null : obstacleOf(place.obstacle);
  const net = obstacle === null ? null : (obstacle.net ?? (obstacle.gross ?? 0) - netReduction);
  return detents.flatMap(({ name: detent }): Asked[] => {
    const most = sheet.weights.maximumTakeOff.value;
    const own = { segment: 'second', detent, place, takeOff: true, obstacle: net } as const;
    const climb = heaviestOf(context, detent, COVERS.takeOff, most);
    const over = heaviestOf(context, detent, COVERS.obstacle, most);
    return [
      ...(climb === null
        ? []
        : [
            { ...own, name: 'second segment', least: second, gross: second, net: false, heaviest: climb, after: false },
          ]),
      ...(over === null || net === null
        ? []
        : [
            { ...own, name: 'obstacle', least: net, gross: net + netReduction, net: true, heaviest: over, after: true },
          ]),
    ];
  });
}

function goAround(context: RuleContext, place: Aerodrome | null, sheet: Sheet): readonly Asked[] {
  const { procedure, policy } = context;
  const { approach, landing } = policy.climb;
  const most = procedure.envelope.weight?.to ?? sheet.weights.maximumLanding.value;
  const named = [...procedure.envelope.detents, ...procedure.entry.flaps];
  const climbing = sheet.detents.filter(({ use }) => use.includes('go-around')).map(({ name }) => name);
  const landings = sheet.detents.filter(({ name, use }) => use.includes('landing') && named.includes(name));
  const own = { place, net: false, obstacle: null, takeOff: false, after: false } as const;
  const asked = (segment: Segment, name: string, detent: string, least: number, covers: RegExp): Asked[] => {
    const heaviest = heaviestOf(context, detent, covers, most);
    return heaviest === null ? [] : [{ ...own, segment, name, detent, least, gross: least, heaviest }];
  };
  const charted = place === null ? [] : missedGradients(place.missedApproachGradient);
  return [
    ...climbing.flatMap((detent) => asked('approach climb', 'approach climb', detent, approach, COVERS.approach)),
    ...(isOut(context)
      ? []
      : landings.flatMap(({ name }) => asked('landing climb', 'landing climb', name, landing, COVERS.landing))),
    ...charted.flatMap(({ percent, only }) => {
      const name = only === '' ? 'charted missed approach' : `missed approach for ${only}`;
      return climbing.flatMap((detent) => asked('approach climb', name, detent, percent, COVERS.missed));
    }),
  ];
}
