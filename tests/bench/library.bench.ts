// A library of 200 procedures of 60 steps checked from nothing and after one edit, by the checks of text and numbers and
// those that hear other procedures; what explores and flies hears nobody. Time of the processor, so that other work on the
// machine does not count.
import { checkLibrary, type FactsOf } from '../../lib/check/library-check.ts';
import { rulesUpTo } from '../../lib/check/stage.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';
import { chanceFrom, editedOne, madeLibrary } from '../kit/library.ts';
import { houseFacts } from '../kit/world.ts';

const PROCEDURES = 200;
const STEPS = 60;
const EDITS = 100;
const AIM = 50;

const rules = rulesUpTo('submission').filter(({ kind }) => !/[XS]/.test(kind));
const { others: _, ...facts } = houseFacts;
const factsOf: FactsOf = () => facts;

function timed<T>(work: () => T): readonly [T, number] {
  const before = process.cpuUsage();
  const made = work();
  const { user, system } = process.cpuUsage(before);
  return [made, (user + system) / 1_000];
}

let all: readonly Procedure[] = madeLibrary(PROCEDURES, STEPS);
// Once for the machine to warm up, then what is measured, on procedures that nothing kept by identity knows.
checkLibrary(madeLibrary(20, STEPS), factsOf, rules);
const [library, whole] = timed(() => checkLibrary(all, factsOf, rules));

const chance = chanceFrom(7);
const words: number[] = [];
const across: number[] = [];
let asked = 0;
for (let edit = 0; edit < EDITS; edit += 1) {
  // Every other one is a word in a note, as most are while writing; the rest reach across procedures.
  const first = all[edit % all.length]!;
  const word = {
    ...first,
    steps: first.steps.map((step, at) => (at === 5 ? { ...step, note: `word ${edit}` } : step)),
  };
  const edited = edit % 2 === 0 ? word : editedOne(all, chance);
  all = all.map((each) => (each.id === edited.id ? edited : each));
  const [again, took] = timed(() => library.edit(edited));
  (edit % 2 === 0 ? words : across).push(took);
  asked += again.length - 1;
}

const middle = (times: readonly number[]): number => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
const shown = (ms: number): string => `${ms.toFixed(1)} ms`;
const faster = (ms: number): string => `${Math.round(whole / ms)} times faster (aim: ${AIM})`;
const worst = Math.max(...across);
console.log(
  `library of ${PROCEDURES} procedures of ${STEPS} steps, ${rules.length} rules: from nothing ${shown(whole)}`,
);
console.log(`  that is ${shown(whole / PROCEDURES)} a procedure`);
console.log(`  after an edit of words: p50 ${shown(middle(words))}, ${faster(middle(words))}`);
console.log(`  after an edit that reaches across: p50 ${shown(middle(across))}, ${faster(middle(across))}`);
console.log(
  `  the slowest of ${EDITS}: ${shown(worst)}, ${faster(worst)}; asked again elsewhere: ${(asked / EDITS).toFixed(1)} checks an edit`,
);
