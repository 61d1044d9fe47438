// What the plan view can show, each with the figures that a person gives and the sentences that come out of them.
import type { Position } from '../../../../lib/air/geodesy.ts';
import type { Wind } from '../../../../lib/air/wind.ts';
import { deviate } from '../../../../lib/flight/deviation.ts';
import { directTo } from '../../../../lib/flight/direct.ts';
import { placed } from '../../../../lib/flight/lateral.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import { formatCourse, formatMiles, formatNumber } from '../../../../lib/units/format.ts';
import { type Degrees, degrees, type NauticalMiles } from '../../../../lib/units/quantity.ts';
import type { PlanPoint } from './plan-shape.ts';

export type Way = 'flown' | 'around' | 'direct';
/** The view that the words of the procedure ask for. */
export const wayOf = ({ title }: Procedure): Way =>
  /\b(weather|deviat)/i.test(title) ? 'around' : /\bdirect\b/i.test(title) ? 'direct' : 'flown';

export type Amounts = Readonly<Record<string, number>>;
export type Field = {
  readonly name: string;
  readonly label: string;
  readonly start: number;
  readonly least: number;
  readonly most: number;
};
const field = (name: string, label: string, start: number, least: number, most: number): Field => ({
  ...{ name, label, start, least, most },
});
const AIR: readonly Field[] = [
  field('tas', 'True speed, kt', 420, 100, 600),
  field('windFrom', 'Wind from, °', 270, 0, 360),
  field('windSpeed', 'Wind, kt', 0, 0, 200),
  field('course', 'Course, °', 90, 0, 360),
];
export const FIELDS: Readonly<Record<'around' | 'direct', readonly Field[]>> = {
  around: [
    field('ahead', 'Cell ahead, NM', 60, 1, 300),
    field('depth', 'Its depth, NM', 15, 0, 100),
    field('left', 'Left edge, NM right of track', -8, -100, 100),
    field('rightEdge', 'Right edge, NM right of track', 5, -100, 100),
    field('toward', 'It moves toward, °', 90, 0, 360),
    field('cellSpeed', 'It moves, kt', 0, 0, 100),
    field('clearance', 'Clearance, NM', 20, 1, 60),
    field('leave', 'Leave by, °', 30, 5, 85),
    field('rejoin', 'Rejoin by, °', 30, 5, 85),
    field('lead', 'Needed before the turn, s', 60, 0, 600),
    ...AIR,
  ],
  direct: [
    field('ahead', 'Waypoint ahead, NM', 40, -300, 300),
    field('right', 'and right of track, NM', 25, -300, 300),
    field('viaAhead', 'Route over, ahead, NM', 30, -300, 300),
    field('viaRight', 'and right of track, NM', 0, -300, 300),
    ...AIR,
  ],
};

export type Planned = {
  readonly path: readonly PlanPoint[];
  readonly names: readonly (PlanPoint & { readonly name: string })[];
  readonly route: readonly PlanPoint[];
  readonly cell: { readonly from: PlanPoint; readonly to: PlanPoint } | null;
  readonly says: readonly string[];
  readonly refused: string;
};
const NOTHING: Planned = { path: [], names: [], route: [], cell: null, says: [], refused: '' };

/** Lengths over the earth do not depend on where: this is nowhere in particular. */
const SOMEWHERE: Position = { latitude: degrees(45), longitude: degrees(0) };
const BANK = 25;
const miles = (value: number): string => formatMiles(value as NauticalMiles);
const course = (value: number): string => formatCourse(value as Degrees);

export function planned(way: Exclude<Way, 'flown'>, amounts: Amounts, side: 'left' | 'right'): Planned {
  const outside = FIELDS[way].find(({ name, least, most }) => !(amounts[name]! >= least && amounts[name]! <= most));
  if (outside !== undefined) {
    return {
      ...NOTHING,
      refused: `${outside.label}: from ${outside.least} to ${outside.most}. Nothing new was planned.`,
    };
  }
  return way === 'around' ? around(amounts, side) : direct(amounts);
}

const air = ({ tas, windFrom, windSpeed }: Amounts) => ({
  tas: tas!,
  bank: BANK,
  wind: { from: degrees(windFrom!), speed: windSpeed } as unknown as Wind,
});

function around(a: Amounts, side: 'left' | 'right'): Planned {
  const cell = {
    ahead: a.ahead!,
    depth: a.depth!,
    left: a.left!,
    right: a.rightEdge!,
    toward: a.toward!,
    speed: a.cellSpeed!,
  };
  const box = {
    from: { along: cell.ahead, right: cell.left },
    to: { along: cell.ahead + cell.depth, right: cell.right },
  };
  if (cell.left > cell.right) return { ...NOTHING, refused: 'The left edge lies right of the right edge.' };
  const { clearance, leave, rejoin, lead } = a;
  const found = deviate({
    ...{ from: SOMEWHERE, course: degrees(a.course!), cell, side, lead: lead! },
    ...{ clearance: clearance!, leave: leave!, rejoin: rejoin!, ...air(a) },
  });
  if (!found.ok) return { ...NOTHING, cell: box, refused: found.error };
  const { points, headings, toCell, stepNames, milesAdded, minutesAdded, offset, closest, tooLate } = found.value;
  return {
    path: [{ along: 0, right: 0 }, ...points],
    names: points.filter(({ name }) => name !== ''),
    route: [
      { along: 0, right: 0 },
      { along: points.at(-1)!.along, right: 0 },
    ],
    cell: box,
    refused: tooLate ? 'The latest point is behind already: plan a larger angle or the other side.' : '',
    says: [
      `Begin the turn ${miles(toCell)} before the cell at the latest; with ${lead} s before it the step names ${formatNumber(stepNames)} NM.`,
      `Heading ${course(headings.leave)} out, ${course(headings.along)} beside it, ${course(headings.rejoin)} back; the parallel leg lies ${miles(Math.abs(offset))} ${side}.`,
      `${miles(milesAdded)} and ${formatNumber(minutesAdded, 1)} min more than the track; nearest to the edge ${miles(closest)}. No fuel is claimed.`,
      'The cell is where it is when the latest point is passed as it moves now; what grows is not in here.',
    ],
  };
}

function direct(a: Amounts): Planned {
  const on = degrees(a.course!);
  const [to, via] = [
    { along: a.ahead!, right: a.right! },
    { along: a.viaAhead!, right: a.viaRight! },
  ];
  const route = [via, to];
  const found = directTo({
    from: SOMEWHERE,
    track: on,
    route: route.map((point) => placed(SOMEWHERE, on, point)),
    ...air(a),
  });
  const drawn = { ...NOTHING, route: [{ along: 0, right: 0 }, ...route] };
  if (!found.ok) return { ...drawn, refused: found.error };
  const {
    turn,
    change,
    miles: flown,
    milesSaved,
    minutesSaved,
    course: leg,
    heading,
    groundSpeed,
    turnMiles,
  } = found.value;
  const saved = (value: number): string => (value < 0 ? 'longer than' : 'shorter than');
  return {
    ...drawn,
    path: [{ along: 0, right: 0 }, to],
    names: [{ ...to, name: 'waypoint' }],
    says: [
      `Turn ${turn} by ${formatNumber(change)}° to course ${course(leg)}, heading ${course(heading)}, ground speed ${formatNumber(groundSpeed)} kt.`,
      `${miles(flown)} to go, ${miles(turnMiles)} of it in the turn: ${miles(Math.abs(milesSaved))} and ${formatNumber(Math.abs(minutesSaved), 1)} min ${saved(milesSaved)} the route. No fuel is claimed.`,
    ],
  };
}
