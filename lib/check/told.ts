// What a procedure tells the others: the few things that library checks compare across procedures, by kind and key. Plain
// data, so that a browser can be sent it, and so that an edit is known to reach exactly those who read a key that changed.
import { allSteps, type Phase, type Procedure, type ProcedureClass } from '../procedure/procedure.ts';
import { type Call, callsOf } from './calls.ts';
import { nameWords, variantTitle } from './names.ts';
import { type Sister, sistersOf } from './sister.ts';
import { type GateTold, gatesOf } from './stable-gate.ts';
import { type Stated, statedIn } from './stated.ts';
import { manoeuvresOf, type Twin, twinOf } from './twin.ts';

export type Head = {
  readonly id: string;
  readonly title: string;
  readonly class: ProcedureClass | '';
  readonly phases: readonly Phase[];
  readonly type: string;
};

/** What is told, by kind. The key of each kind stands beside it. */
export type Kinds = {
  /** The permanent id. What is told otherwise names who tells it by this id alone, so that a new title reaches only those
   *  who read a title. */
  readonly head: Head;
  /** The family of a step, or its own id where it has none. */
  readonly family: Sister;
  /** A label, and the beginning that the labels of a procedure share, such as `GA-`. */
  readonly label: { readonly step: string };
  /** A word of the title, or the permanent id. */
  readonly word: { readonly title: string };
  /** A manoeuvre, such as `go-around`. */
  readonly twin: Twin & Pick<Head, 'class' | 'type'>;
  /** The title without what says for which tails it is. */
  readonly variant: Pick<Head, 'title' | 'class' | 'type'> & { readonly standards: readonly string[] };
  /** The name of a quantity. */
  readonly value: Stated;
  /** Always `stable`. */
  readonly gate: GateTold;
  /** A phase. */
  readonly call: Call;
};
export type Kind = keyof Kinds;
export const KINDS: readonly Kind[] = ['head', 'family', 'label', 'word', 'twin', 'variant', 'value', 'gate', 'call'];

type Table<T> = Readonly<Record<string, readonly T[]>>;
export type Told = { readonly head: Head; readonly tells: { readonly [K in Kind]: Table<Kinds[K]> } };

const told = new WeakMap<Procedure, Told>();

/** Made once for each procedure. */
export function toldBy(procedure: Procedure): Told {
  const before = told.get(procedure);
  if (before !== undefined) return before;
  const made = tell(procedure);
  told.set(procedure, made);
  return made;
}

function tell(procedure: Procedure): Told {
  const { id, title, class: kind, phases, effectivity } = procedure;
  const steps = allSteps(procedure);
  const head: Head = { id, title, class: kind, phases, type: effectivity.type };
  const twin = twinOf(procedure, steps);
  return {
    head,
    tells: {
      head: table([[id, head]]),
      family: table(sistersOf(procedure, steps).map((sister) => [sister.family, sister])),
      label: table(
        [...steps, ...procedure.branches].flatMap(({ label, id: step }) =>
          label === '' ? [] : [[label, { step }] as const, [prefixOf(label), { step: '' }] as const],
        ),
      ),
      word: table([...new Set([id, ...nameWords(title)])].map((word) => [word, { title }])),
      twin: table(manoeuvresOf(procedure).map((manoeuvre) => [manoeuvre, { ...twin, class: kind, type: head.type }])),
      variant: table([
        [variantTitle(title), { title, class: kind, type: head.type, standards: effectivity.standards }],
      ]),
      value: table(statedIn(procedure, steps).map((stated) => [stated.quantity, stated])),
      gate: table(gatesOf(procedure, steps).map((gate) => ['stable', gate])),
      call: table(phases.flatMap((phase) => callsOf(steps).map((call) => [phase, call] as const))),
    },
  };
}

/** `GA-` of `GA-07`; the label itself where it has no dash. */
export const prefixOf = (label: string): string => /^[^-]+-/.exec(label)?.[0] ?? label;

function table<T>(pairs: readonly (readonly [string, T])[]): Table<T> {
  const made = new Map<string, T[]>();
  for (const [key, value] of pairs) {
    const there = made.get(key);
    if (there === undefined) made.set(key, [value]);
    else there.push(value);
  }
  return Object.fromEntries(made);
}
