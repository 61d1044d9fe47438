// The checks, asked of one procedure. This folder reads facts and answers findings: it stores nothing, asks nobody, and
// gives the same answer in the browser, on the server and on the command line. A rule never imports a rule, and no
// rule runs over weights itself: questions about all weights go to the prover. It never says "safe": it says what was
// checked, over which ranges, and what could not be.

import { assert } from '../base/assert.ts';
import { type Flights, fly } from '../mode/flights.ts';
import { parsedCue } from '../procedure/parsed-cue.ts';
import { allSteps, type Procedure, type Step } from '../procedure/procedure.ts';
import { type StepState, walk } from '../procedure/walk.ts';
import { type Corpus, corpusOf } from './corpus.ts';
import { envelopeProblem, envelopeWords } from './envelope-words.ts';
import { type Facts, MISSING, NO_FACTS } from './facts.ts';
import type { Crash, Finding, NotChecked } from './finding.ts';
import { fieldsRead, fingerprint, placeKey } from './fingerprint.ts';
import { type Flown, flownOver } from './flown.ts';
import { libraryState } from './library-state.ts';
import { inReadingOrder } from './order.ts';
import type { Report, Rule, RuleContext } from './rule.ts';
import { rulesUpTo } from './stage.ts';

export type Checked = {
  readonly findings: readonly Finding[];
  readonly notChecked: readonly NotChecked[];
  readonly crashed: readonly Crash[];
  /** The rules that were asked to the end, and the ranges over which, in words. `library`: the state of the operator's
   *  library that they saw (`libraryState`); null: they saw none. */
  readonly checked: {
    readonly rules: readonly string[];
    readonly envelope: string;
    readonly library: string | null;
  };
};

/** Asks every rule that belongs to the procedure's phases, by default those that run up to submission. A fact
 *  left out is missing. `corpus`: the others, where they are indexed already. Never throws on account of a rule: that is a
 *  crash of the rule. */
export function checkProcedure(
  procedure: Procedure,
  given: Partial<Facts>,
  rules: readonly Rule[] = rulesUpTo('submission'),
  corpus?: Corpus,
): Checked {
  const facts: Facts = { ...NO_FACTS, ...given };
  const steps = allSteps(procedure);
  const byId = new Map(steps.map((step) => [step.id as string, step]));
  const found: Finding[] = [];
  const notChecked: NotChecked[] = [];
  const crashed: Crash[] = [];
  const asked: string[] = [];
  const ground = groundOf(procedure, facts, steps, corpus);

  for (const rule of rules) {
    const { id: check, number } = rule;
    if (rule.phases !== 'all' && !rule.phases.some((phase) => procedure.phases.includes(phase))) continue;
    const missing = rule.needs.filter((need) => facts[need] === null);
    if (missing.length > 0) {
      for (const need of missing) notChecked.push({ check, number, because: MISSING[need], at: null });
      continue;
    }
    const unproven = rule.kind.includes('N') ? envelopeProblem(procedure) : null;
    if (unproven !== null) {
      notChecked.push({ check, number, because: unproven, at: null });
      continue;
    }
    const mine: Finding[] = [];
    const unasked: NotChecked[] = [];
    const context = ground((because, at) => unasked.push({ check, number, because, at }));
    try {
      rule.run(context, reporter(rule, byId, mine));
      found.push(...mine);
      notChecked.push(...unasked);
      asked.push(check);
    } catch (error) {
      crashed.push({ check, number, error: error instanceof Error ? error.message : String(error) });
    }
  }
  return {
    findings: inReadingOrder(procedure, found),
    notChecked,
    crashed,
    checked: { rules: asked, envelope: envelopeWords(procedure, facts.sheet), library: libraryState(facts) },
  };
}

/** What all rules share. The walk is made when the first rule is asked, and once. */
function groundOf(procedure: Procedure, facts: Facts, steps: readonly Step[], corpus: Corpus | undefined) {
  let states: readonly StepState[] | undefined;
  let flights: Flights | undefined;
  let flown: Flown | undefined;
  return (unasked: RuleContext['unasked']): RuleContext => ({
    procedure,
    steps,
    gate: parsedCue,
    unasked,
    get states() {
      return (states ??= walk(procedure, facts.sheet));
    },
    get flights() {
      assert(facts.sheet !== null, 'a rule that explores needs the sheet');
      return (flights ??= fly(facts.sheet.modes, procedure));
    },
    get flown() {
      const { sheet, policy, library } = facts;
      assert(sheet !== null && policy !== null, 'a rule that flies needs sheet and policy');
      return (flown ??= flownOver(procedure, { sheet, policy, library }));
    },
    // A rule is asked only when all that it needs is there.
    sheet: facts.sheet as RuleContext['sheet'],
    policy: facts.policy as RuleContext['policy'],
    library: facts.library as RuleContext['library'],
    get others() {
      assert(facts.others !== null, 'a rule that hears the others needs them');
      return corpus ?? corpusOf(facts.others);
    },
    fleet: facts.fleet as RuleContext['fleet'],
    governance: facts.governance as RuleContext['governance'],
  });
}

function reporter(rule: Rule, byId: ReadonlyMap<string, Step>, into: Finding[]): Report<string> {
  return ({ at, message, data, witness, cause, fix, severity, read }) => {
    const template = rule.messages[message];
    if (template === undefined) throw new Error(`${rule.id} has no message "${message}"`);
    const sentence = template.replaceAll(/\{(\w+)\}/g, (whole, name: string) => {
      const value = data?.[name];
      if (value === undefined) throw new Error(`${rule.id}: nothing was given for ${whole}`);
      return String(value);
    });
    const step = byId.get(at.step);
    const fields = step === undefined ? null : fieldsRead(step, rule.reads);
    into.push({
      check: rule.id,
      number: rule.number,
      severity: severity ?? rule.severity,
      at,
      message: sentence,
      witness,
      cause: cause ?? `${rule.id} ${placeKey(at)}`,
      fix: fix ?? null,
      read: fingerprint([rule.id, rule.version ?? 1, at.step, at.field, message, fields, read ?? []]),
    });
  };
}
