// How each figure of the policy is called on the page, and its unit. A test holds this against the schema.

/** `under`: the part of the policy that the group shows; null: what stands at its head. */
export const GROUPS: readonly { readonly title: string; readonly under: string | null }[] = [
  { title: 'Whose policy it is', under: null },
  { title: 'Speeds', under: 'speeds' },
  { title: 'Lowest speeds by phase', under: 'floors' },
  { title: 'Gates', under: 'gates' },
  { title: 'Climb gradients', under: 'climb' },
  { title: 'Length of lists', under: 'lists' },
  { title: 'How long things take', under: 'durations' },
  { title: 'Who presses and turns', under: 'panel' },
  { title: 'Words', under: 'words' },
  { title: 'Sign-off', under: 'signOff' },
];

/** Phases for which the policy has a lowest speed. */
export const FLOORS: Readonly<Record<string, string>> = {
  takeOff: 'take-off',
  engineOut: 'one engine out',
  goAroundFirstRetraction: 'go-around, first retraction',
  finalApproach: 'final approach',
  elsewhere: 'elsewhere',
};
const FLOOR_PARTS: Readonly<Record<string, string>> = { speed: 'named speed', of: 'of the detent', plus: 'and' };

const WORDS: Readonly<Record<string, readonly [string, string]>> = {
  operator: ['Operator', ''],
  version: ['Number of this policy', ''],
  owner: ['Kept by', ''],
  'speeds.selectionMargin': ['Flap is selected below VFE by', 'kt'],
  'speeds.selectionMarginTurbulence': ['The same in turbulence', 'kt'],
  'speeds.bandMinimum': ['VFE of the next detent above VMM of the present one, at least', 'kt'],
  'speeds.bankBelowVmm': ['Steepest bank below VMM', '°'],
  'speeds.cleanSpeedAddition': ['Clean speed above VMM clean', 'kt'],
  'speeds.approachAddition.least': ['VAPP above VREF, at least', 'kt'],
  'speeds.approachAddition.most': ['VAPP above VREF, at most', 'kt'],
  'speeds.approachAddition.headWindShare': ['Share of the steady head wind in it', 'of 1'],
  'speeds.additionMargin': ['VREF and the largest addition below VFE by', 'kt'],
  'speeds.takeOffTarget': ['Take-off target above V2, all engines', 'kt'],
  'speeds.initialClimb.least': ['Initial climb above V2, at least', 'kt'],
  'speeds.initialClimb.most': ['Initial climb above V2, at most', 'kt'],
  'speeds.areaLimit.speed': ['Speed limit of the area', 'kt'],
  'speeds.areaLimit.below': ['It holds below', 'ft MSL'],
  'speeds.crossCheck.at': ['Speeds are compared at', 'kt'],
  'speeds.crossCheck.within': ['They agree within', 'kt'],
  'speeds.crossCheck.thrustSetBy': ['Take-off thrust is set by', 'kt'],
  'speeds.hold.low.speed': ['Fastest in a low hold', 'kt'],
  'speeds.hold.low.upTo': ['A hold is low up to', 'ft MSL'],
  'speeds.hold.middle.speed': ['Fastest in a hold above that', 'kt'],
  'speeds.hold.middle.upTo': ['It holds up to', 'ft MSL'],
  'speeds.hold.high.speed': ['Fastest in a high hold', 'kt'],
  'speeds.hold.high.upTo': ['A hold is high up to', 'ft MSL'],
  'gates.stable.height': ['Stable by', 'ft AAL'],
  'gates.stable.heightVisual': ['Stable by, in visual conditions', 'ft AAL'],
  'gates.stable.speedBelow': ['Speed below the target, at most', 'kt'],
  'gates.stable.speedAbove': ['Speed above the target, at most', 'kt'],
  'gates.stable.sink': ['Sink rate, at most', 'ft/min'],
  'gates.houseFloor': ['No change of configuration, heading or thrust below', 'ft AAL'],
  'gates.autopilot.takeOff': ['Autopilot after take-off, not below', 'ft AAL'],
  'gates.autopilot.glide': ['Autopilot on the glide path, not below', 'ft RA'],
  'gates.autopilot.otherwise': ['Autopilot otherwise, not below', 'ft AAL'],
  'gates.noise.lowest': ['Noise procedure begins, at least', 'ft AAL'],
  'gates.noise.latest': ['Noise procedure ends, at most', 'ft AAL'],
  'gates.accelerationAltitude': ['Acceleration height', 'ft AAL'],
  'gates.climbThrustAltitude': ['Climb thrust height', 'ft AAL'],
  'gates.goAroundAccelerationAltitude': ['Acceleration height in a go-around', 'ft AAL'],
  'gates.levelOff.rate': ['Rate before level-off, at most', 'ft/min'],
  'gates.levelOff.within': ['It holds within', 'ft'],
  'gates.highAerodrome': ['An aerodrome is high from', 'ft MSL'],
  'gates.routeEntry': ['Route is entered again by', 'ft AAL'],
  'gates.crossover': ['Mach takes over this near to where it meets the indicated speed', 'ft'],
  'gates.cold.below': ['Charted altitudes are corrected below', '°C'],
  'gates.cold.selector': ['A corrected altitude is set rounded up to', 'ft'],
  'gates.cold.minima': ['A corrected minimum is set rounded up to', 'ft'],
  'climb.second': ['Second segment, gross', '%'],
  'climb.final': ['Final segment, gross', '%'],
  'climb.approach': ['Approach climb, gross', '%'],
  'climb.landing': ['Landing climb, gross', '%'],
  'climb.netReduction': ['Gross above net by', '%'],
  'climb.leastRate': ['Least rate of climb that counts as climbing', 'ft/min'],
  'lists.items': ['Items of one list, at most', 'items'],
  'lists.words': ['Words of one list, at most', 'words'],
  'lists.afterGear': ['Items after the gear, at most', 'items'],
  'durations.speechWordsPerSecond': ['Speech', 'words/s'],
  'durations.challengeResponse': ['Challenge and response', 's'],
  'durations.lever': ['Moving a lever', 's'],
  'durations.pressAndRead': ['Pressing and reading the modes', 's'],
  'durations.setAltitude': ['Setting an altitude', 's'],
  'durations.radio': ['A radio call', 's'],
  'durations.dataEntry': ['Entering data', 's'],
  'durations.reaction': ['Reaction', 's'],
  'durations.least': ['A quick crew takes', '× the time'],
  'durations.most': ['A slow crew takes', '× the time'],
  'durations.busyTen': ['Busy in any 10 s, at most', 'of 1'],
  'durations.busyThirty': ['Busy in any 30 s, at most', 'of 1'],
  'durations.modeReading': ['Modes read after a press within', 's'],
  'durations.callWait': ['A call waits for the voice, at most', 's'],
  'durations.handWait': ['A step waits for hands, at most', 's'],
  'durations.slack': ['Time left over before a deadline', 'of 1'],
  'panel.handFlown': ['Hand flown', ''],
  'panel.autopilot': ['With autopilot', ''],
  'panel.goAround': ['Go-around until clean', ''],
  'panel.goAroundSwitch': ['Go-around switch', ''],
  'words.elastic': ['Cannot be measured', 'one a line'],
  'words.vagueActors': ['No role', 'one a line'],
  'words.emptyReplies': ['Replies that say no value', 'one a line'],
  'words.negative': ['Negative wording', 'one a line'],
  'words.weakForce': ['Too weak for a limit', 'one a line'],
  'words.knownAbbreviations': ['Understood without explanation', 'one a line'],
  'words.reserved': ['Kept for air traffic control', 'one a line'],
  'words.callWords': ['Words in one call, at most', 'words'],
  'signOff.people': ['Drafter, reviewer and approver are at least', 'people'],
  'signOff.waiverMonths': ['A waiver ends within', 'months'],
  'signOff.answerMonths': ['An answer holds for', 'months'],
  'signOff.reasonWords': ['A reason has at least', 'words'],
  'signOff.feedbackDays': ['A report is answered within', 'days'],
  'signOff.acknowledgedShare': ['Line pilots who confirm before the date', 'of 1'],
  'signOff.familiarisationDays': ['Time to get to know a new issue', 'days'],
};

/** The name in the schema as words: for a field that nobody has named here yet. */
const plainly = (path: string): string => {
  const name = path.split('.').slice(1).join(', ') || path;
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
};

function floorWords(path: string): string | null {
  const [group, phase = '', part = ''] = path.split('.');
  return group === 'floors' && FLOORS[phase] && FLOOR_PARTS[part] ? `${FLOORS[phase]}: ${FLOOR_PARTS[part]}` : null;
}

/** The groups whose fields belong together three by three. */
export const isInThrees = (title: string): boolean => GROUPS.find((group) => group.title === title)?.under === 'floors';

export const isNamed = (path: string): boolean => path in WORDS || floorWords(path) !== null;
export function wordsFor(path: string): string {
  const floor = floorWords(path);
  if (floor) return floor[0]!.toUpperCase() + floor.slice(1);
  return WORDS[path]?.[0] ?? plainly(path);
}
export const unitOf = (path: string): string =>
  WORDS[path]?.[1] ?? (path.startsWith('floors.') && path.endsWith('.plus') ? 'kt' : '');
