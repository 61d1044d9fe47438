// Harmless rewordings: the same procedure said in other words, which must not be stopped. A program of its own, with its own
// chance, so that each number gives the same text again.
import { allSteps, type Procedure, type Step, type StepId } from '../../../lib/procedure/procedure.ts';

type Chance = () => number;
/** Multiply and shift, 32 bits: good enough to choose words. */
function chance(seed: number): Chance {
  let state = (seed * 2_654_435_761) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const SYNONYMS: readonly (readonly [RegExp, readonly string[]])[] = [
  [/\bbecause\b/g, ['since', 'as']],
  [/\bbelow\b/g, ['under']],
  [/\bstands\b/g, ['is']],
  [/\bearlier\b/g, ['sooner']],
  [/\bbecomes\b/g, ['turns into']],
  [/\balways\b/g, ['in every case']],
  [/\bdisplay\b/g, ['screen']],
  [/\bleft out\b/g, ['omitted']],
];

/** Notes and reasons in other words: nothing that is done, seen or said. */
function prose(text: string, random: Chance): string {
  return SYNONYMS.reduce(
    (all, [word, others]) =>
      all.replaceAll(word, (whole) => (random() < 0.5 ? whole : others[Math.floor(random() * others.length)]!)),
    text,
  );
}

/** Spaces of another kind in figures and between words: what a keyboard and another program write. */
function spaced(text: string, random: Chance): string {
  const thousands = ['\u00a0', '\u202f', ' '][Math.floor(random() * 3)]!;
  return text.replaceAll(/(\d) (?=\d{3}\b)/g, `$1${thousands}`);
}

/** The same condition in another legal spelling of gate notation. */
function gate(text: string, random: Chance): string {
  let cue = text;
  if (random() < 0.5)
    cue = cue.replaceAll(/ (>=|<=|=|<|>) /g, (_, op: string) => ({ '>=': ' ≥ ', '<=': ' ≤ ' })[op] ?? ` ${op} `);
  if (random() < 0.4) cue = cue.replaceAll(/ (and|or) /g, (_, word: string) => `  ${word}  `);
  if (random() < 0.4 && !cue.includes('"')) cue = cue.replaceAll(/ \+ /g, '+').replaceAll(/ - (?=\d)/g, ' -  ');
  return spaced(cue, random);
}

function shuffled<T>(list: readonly T[], random: Chance): readonly T[] {
  return list
    .map((value) => [random(), value] as const)
    .sort(([a], [b]) => a - b)
    .map(([, value]) => value);
}

/** Everything that is done, seen and said stays; ids, order of flags, spelling and prose are other ones. */
export function harmless(procedure: Procedure, seed: number): Procedure {
  const random = chance(seed);
  const ids = new Map(allSteps(procedure).map((step, index) => [step.id as string, `r${seed}x${index}` as StepId]));
  const step = (one: Step): Step => ({
    ...one,
    id: ids.get(one.id)!,
    cue: gate(one.cue, random),
    value: spaced(one.value, random),
    checkSees: spaced(one.checkSees, random),
    note: prose(one.note, random),
    why: prose(one.why, random),
    source: one.source,
    flags: shuffled(one.flags, random),
    before: one.before.map((notice) => ({ ...notice, text: prose(notice.text, random) })),
  });
  return {
    ...procedure,
    rationale: prose(procedure.rationale, random),
    leavesTo: shuffled(procedure.leavesTo, random),
    phases: procedure.phases,
    entry: { ...procedure.entry, also: spaced(procedure.entry.also, random) },
    exit: { ...procedure.exit, also: spaced(procedure.exit.also, random) },
    effectivity: { ...procedure.effectivity, standards: shuffled(procedure.effectivity.standards, random) },
    steps: procedure.steps.map(step),
    branches: procedure.branches.map((branch) => ({
      ...branch,
      when: gate(branch.when, random),
      steps: branch.steps.map(step),
    })),
  };
}
