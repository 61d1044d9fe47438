// The manual page of a check in words, made from the check itself: the command line and the screen say the same.
import type { Phase } from '../procedure/procedure.ts';
import type { Need } from './facts.ts';
import type { Severity } from './finding.ts';
import type { Kind, Rule, Stage } from './rule.ts';
import { rules } from './rules/index.ts';

const ASKED: Readonly<Record<string, string>> = {
  T: 'text and structure',
  N: 'numbers over the whole envelope',
  X: 'every reachable state of the modes',
  S: 'a flight with both pilots',
};
const NEEDED: Readonly<Record<Need, string>> = {
  sheet: 'the type data sheet',
  policy: "the operator's policy",
  library: "the operator's library",
  others: "the operator's other procedures",
  fleet: 'the tails of the fleet',
  governance: 'the record of the change',
};

export const kindWords = (kind: Kind): string =>
  kind
    .split('/')
    .map((part) => ASKED[part] ?? part)
    .join('; ');
export const phaseWords = ({ phases }: Rule): string => (phases === 'all' ? 'all phases' : phases.join(', '));
export const needWords = ({ needs }: Rule): string =>
  needs.map((need) => NEEDED[need]).join(', ') || 'the procedure alone';
export const readWords = ({ reads }: Rule): string => reads.join(', ') || 'the procedure itself';
export const sourceWords = ({ source }: Rule): string =>
  `${source.text}${source.seen ? '' : ' (from memory, to be verified)'}`;

export type Asked = {
  readonly words?: string;
  readonly severity?: string;
  /** One letter: a check of two kinds is found by either. */
  readonly kind?: string;
  readonly phase?: string;
  readonly stage?: string;
};

/** The checks, by number, that hold every word and have what is chosen; a choice left empty chooses all. */
export function findChecks({ words = '', severity, kind, phase, stage }: Asked): readonly Rule[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  return rules.filter(
    (rule) =>
      (!severity || rule.severity === severity) &&
      (!kind || rule.kind.split('/').includes(kind)) &&
      (!phase || rule.phases === 'all' || rule.phases.includes(phase as Phase)) &&
      (!stage || rule.stage === stage) &&
      wanted.every((word) => textOf(rule).includes(word)),
  );
}

/** By plain-word id or by number; null when there is none. */
export const checkNamed = (name: string): Rule | null =>
  rules.find(({ id, number }) => id === name || String(number) === name) ?? null;

const textOf = (rule: Rule): string => {
  const { id, number, severity, kind, stage, title, says, why, messages } = rule;
  const own = [id, number, severity, kindWords(kind), stage, phaseWords(rule), title, says, why];
  return [...own, ...Object.values(messages)].join(' ').toLowerCase();
};

/** What a reader may choose among, with its words. */
export const KINDS: readonly (readonly [string, string])[] = Object.entries(ASKED);
export const STAGES: readonly Stage[] = ['writing', 'submission', 'publication', 'in force'];
export const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  STOP: 'fixed, or waived by a standards captain who did not draft',
  ANSWER: 'fixed, or answered with a reason',
  ADVICE: 'shown and counted, holds nothing',
};
