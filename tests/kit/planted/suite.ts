// All plants, and what became of each: found by the check that is meant for it, or not.
import { checkProcedure } from '../../../lib/check/check.ts';
import type { Finding, Severity } from '../../../lib/check/finding.ts';
import { rules } from '../../../lib/check/rules/index.ts';
import { rulesUpTo } from '../../../lib/check/stage.ts';
import { BASES } from './bases.ts';
import { CHANGE } from './change.ts';
import { FIVE_PER_CENT } from './five-per-cent.ts';
import { harmless } from './harmless.ts';
import { PATH } from './path.ts';
import type { Base, Mutant, Plants } from './plant.ts';
import { SPEEDS } from './speeds.ts';
import { STRUCTURE } from './structure.ts';
import { vref } from './vref.ts';
import { WORDING } from './wording.ts';

/** A check of text, figures or both gets its entry in one of these files. */
export const PLANTS: Plants = { ...STRUCTURE, ...WORDING, ...SPEEDS, ...vref, ...PATH, ...CHANGE };
const mutantsOf = (check: string, base: Base): readonly Mutant[] => [
  ...(PLANTS[check]?.(base) ?? []),
  ...(FIVE_PER_CENT[check]?.(base) ?? []),
];

export type Planted = {
  readonly check: string;
  readonly mutants: number;
  /** Procedures of the demo type that hold one, each counted once. */
  readonly procedures: number;
  readonly onOther: number;
  readonly missed: readonly string[];
};

/** The checks that this suite is for: those of text and figures. */
export const MEANT: readonly string[] = rules
  .filter(({ kind }) => ['T', 'N', 'T/N'].includes(kind))
  .map(({ id }) => id);

const wordsOf = ({ at, message }: Finding): string => `${at.step} ${at.field} ${message}`;

function found(base: Base, check: string, facts: Base['facts'], procedure = base.procedure): readonly Finding[] {
  const rule = rules.find(({ id }) => id === check);
  if (rule === undefined) throw new Error(`there is no check ${check}`);
  const { findings, crashed } = checkProcedure(procedure, facts, [rule]);
  if (crashed.length > 0) throw new Error(`${check}: ${crashed[0]!.error}`);
  return findings;
}

/** Plants all defects of one check and says which of them it did not find. What the base says already does not count. */
export function plant(check: string): Planted {
  if (!(check in PLANTS)) throw new Error(`nothing is planted for ${check}`);
  const missed: string[] = [];
  let [mutants, onOther] = [0, 0];
  const procedures = new Set<string>();
  for (const base of BASES) {
    const all = mutantsOf(check, base);
    if (all.length === 0) continue;
    const before = new Set(found(base, check, base.facts).map(wordsOf));
    for (const { says, procedure, facts } of all) {
      const after = found(base, check, { ...base.facts, ...facts }, procedure);
      if (!after.some((finding) => !before.has(wordsOf(finding))))
        missed.push(`${procedure.title}${base.other ? ' (other)' : ''}: ${says}`);
      mutants++;
      if (base.other) onOther++;
      else procedures.add(base.procedure.id);
    }
  }
  return { check, mutants, procedures: procedures.size, onOther, missed };
}

export type Alarm = { readonly check: string; readonly severity: Severity; readonly says: string };

const asked = rulesUpTo('submission').filter(({ kind }) => !kind.includes('S'));
const said = new Map<Base, ReadonlySet<string>>();
const sentence = ({ check, message }: Finding): string => `${check} ${message}`;

function checkAll({ facts }: Base, procedure: Base['procedure']): readonly Finding[] {
  const { findings, crashed } = checkProcedure(procedure, facts, asked);
  if (crashed.length > 0) throw new Error(`${crashed[0]!.check}: ${crashed[0]!.error}`);
  return findings;
}

/** Rewordings `from` up to, not including, `to`, of all bases in turn, asked by all checks that do not fly; what they say
 *  that the text before did not. */
export function alarms(from: number, to: number): readonly Alarm[] {
  const found: Alarm[] = [];
  for (let seed = from; seed < to; seed++) {
    const base = BASES[seed % BASES.length]!;
    const before = said.get(base) ?? new Set(checkAll(base, base.procedure).map(sentence));
    said.set(base, before);
    const text = harmless(base.procedure, seed);
    for (const finding of checkAll(base, text)) {
      const { check, severity, message } = finding;
      if (!before.has(sentence(finding))) found.push({ check, severity, says: `${text.title} (${seed}): ${message}` });
    }
  }
  return found;
}
