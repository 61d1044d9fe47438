// Tables of cases for one rule. Every case runs twice on frozen input, again with the keys of all objects in another order,
// and must say the same; no finding may be said twice; every message of the rule must be brought about by some case.
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { type Checked, checkProcedure } from '../../lib/check/check.ts';
import { type Facts, MISSING } from '../../lib/check/facts.ts';
import type { Witness } from '../../lib/check/finding.ts';
import type { Rule } from '../../lib/check/rule.ts';
import { type Told, toldBy } from '../../lib/check/told.ts';
import { type ProcedureParts, procedureWith, type StepParts } from '../../lib/procedure/build.ts';
import type { Procedure, ProcedureId } from '../../lib/procedure/procedure.ts';
import { houseFacts, tn182 } from './world.ts';

export type Expected = {
  /** `step field`, such as `s1 cue`; ` exit.flaps` for a field of the procedure itself. */
  readonly at: string;
  /** The key of the message. */
  readonly message: string;
  /** Words that the sentence must hold. */
  readonly says?: string;
  readonly witness: Partial<
    Record<keyof Extract<Witness, { kind: 'text' }> | 'first' | 'second' | 'says' | 'at', unknown>
  >;
  /** The text that the fix would write; null: no fix. */
  readonly fix?: string | null;
};
export type Case = { readonly procedure: ProcedureParts; readonly facts?: Partial<Facts>; readonly why?: string };
export type Table = {
  readonly valid: readonly (ProcedureParts | Case)[];
  readonly invalid: readonly (Case & { readonly findings: readonly Expected[] })[];
  /** An input is missing: the rule says "not checked, because …". Only for rules that can lack one. */
  readonly missing?: readonly (Case & { readonly because: string })[];
};

const LEAST = 3;

export function testRule(rule: Rule, table: Table): void {
  describe(`${rule.number} ${rule.id}`, () => {
    it('has enough cases, and one for each message', () => {
      expect(table.valid.length).toBeGreaterThanOrEqual(LEAST);
      expect(table.invalid.length).toBeGreaterThanOrEqual(LEAST);
      const said = new Set(table.invalid.flatMap((each) => each.findings.map((finding) => finding.message)));
      expect([...said].sort()).toEqual(Object.keys(rule.messages).sort());
    });

    it('says nothing to its good example and something to its bad one', () => {
      const [good, bad] = [example(rule.examples.good), example(rule.examples.bad)];
      expect(verdict(rule, good.procedure, good.facts).findings.map((finding) => finding.message)).toEqual([]);
      expect(verdict(rule, bad.procedure, bad.facts).findings).not.toEqual([]);
    });

    it.each(table.valid.map(asCase))('lets pass: $why', ({ procedure, facts }) => {
      const result = verdict(rule, procedureWith(procedure), facts ?? {});
      expect(result.findings.map((finding) => finding.message)).toEqual([]);
      expect(result.notChecked).toEqual([]);
    });

    it.each(table.invalid.map((each, index) => ({ ...each, why: each.why ?? `case ${index + 1}` })))(
      'finds: $why',
      ({ procedure, facts, findings }) => {
        const found = verdict(rule, procedureWith(procedure), facts ?? {}).findings;
        expect(found.map((each) => `${each.at.step} ${each.at.field}: ${each.message}`)).toHaveLength(findings.length);
        for (const [index, wanted] of findings.entries()) {
          const got = found[index]!;
          expect(`${got.at.step} ${got.at.field}`).toBe(wanted.at);
          expect(got.message).toMatch(pattern(rule, wanted.message));
          if (wanted.says !== undefined) expect(got.message).toContain(wanted.says);
          expect(got.witness).toMatchObject(wanted.witness);
          if (wanted.fix !== undefined) expect(got.fix?.value ?? null).toBe(wanted.fix);
        }
      },
    );

    const lacking = [
      ...(table.missing ?? []),
      ...rule.needs.map((need) => ({
        procedure: {},
        facts: { [need]: null },
        because: MISSING[need],
      })),
    ];
    if (lacking.length === 0) {
      it('needs nothing but the procedure', () => expect(rule.needs).toEqual([]));
    } else {
      it.each(lacking)('is not checked, and says so: $because', ({ procedure, facts, because }) => {
        const phases = rule.phases === 'all' ? {} : { phases: rule.phases };
        const result = verdict(rule, procedureWith({ ...phases, ...procedure }), facts ?? {});
        expect(result.notChecked.map((each) => each.because).join('\n')).toContain(because);
      });
    }
  });
}

/** The rule's own answer, the same however often and in whatever order of keys it is asked. */
export function verdict(rule: Rule, procedure: Procedure, facts: Partial<Facts>): Checked {
  const all: Facts = { ...houseFacts, ...facts };
  const once = checkProcedure(frozen(procedure), all, [rule]);
  expect(once.crashed).toEqual([]);
  expect(checkProcedure(frozen(procedure), all, [rule])).toEqual(once);
  expect(checkProcedure(turned(procedure), all, [rule])).toEqual(once);
  const keys = once.findings.map(
    (each) => `${each.at.step} ${each.at.field} ${each.message} ${JSON.stringify(each.witness)}`,
  );
  expect(keys).toHaveLength(new Set(keys).size);
  return once;
}

type Patch = { readonly [key: string]: unknown };
type Example = ProcedureParts & {
  readonly sheet?: Patch;
  readonly library?: Patch;
  readonly fleet?: Patch;
  readonly others?: readonly ProcedureParts[];
  readonly governance?: Patch & { readonly change?: { readonly base?: { readonly procedure: ProcedureParts } } };
};

/** An example of a rule: a list of steps, or the parts of a procedure, with `sheet`, `library`, `fleet` and `governance`
 *  for what is other there, and the operator's `others` as parts. */
export function example(yaml: string): Required<Pick<Case, 'facts'>> & { readonly procedure: Procedure } {
  const data = parse(yaml) as Example | readonly StepParts[];
  if (Array.isArray(data)) return { procedure: procedureWith({ steps: data }), facts: {} };
  const { sheet, library, fleet, others, governance, ...parts } = data as Example;
  const base = governance?.change?.base;
  const change = base && { ...governance.change, base: { ...base, procedure: procedureWith(base.procedure) } };
  return {
    procedure: procedureWith(parts),
    facts: {
      ...(sheet && { sheet: patched(tn182, sheet) }),
      ...(library && { library: patched(houseFacts.library, library) }),
      ...(fleet && { fleet: patched(houseFacts.fleet, fleet) }),
      ...(others && { others: told(others) }),
      ...(governance && {
        governance: patched(houseFacts.governance, { ...governance, ...(change && { change }) }),
      }),
    },
  };
}

/** The operator's other procedures from their parts, as a rule hears them. */
export const told = (others: readonly ProcedureParts[]): readonly Told[] =>
  others.map((parts, index) => toldBy({ ...procedureWith(parts), id: `other-${index + 1}` as ProcedureId }));

function patched<T>(value: T, patch: Patch): T {
  const all = value as Record<string, unknown> | null | undefined;
  const entries = Object.entries(patch).map(([key, inner]) => {
    const nested = inner !== null && typeof inner === 'object' && !Array.isArray(inner);
    return [key, nested ? patched(all?.[key], inner as Patch) : inner];
  });
  return { ...all, ...Object.fromEntries(entries) } as T;
}

function asCase(each: ProcedureParts | Case, index: number): Case & { readonly why: string } {
  const whole = 'procedure' in each ? each : { procedure: each };
  return { ...whole, why: whole.why ?? `case ${index + 1}` };
}

/** A sentence of this message, whatever was filled in. */
function pattern(rule: Rule, message: string): RegExp {
  const template = rule.messages[message];
  if (template === undefined) throw new Error(`${rule.id} has no message ${message}`);
  const parts = template.split(/\{\w+\}/).map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  return new RegExp(`^${parts.join('.*')}$`, 's');
}

function frozen<T>(value: T): T {
  if (value !== null && typeof value === 'object' && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const inner of Object.values(value)) frozen(inner);
  }
  return value;
}

function turned<T>(value: T): T {
  if (Array.isArray(value)) return value.map(turned) as T;
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).reverse();
  return Object.fromEntries(entries.map(([key, inner]) => [key, turned(inner)])) as T;
}
