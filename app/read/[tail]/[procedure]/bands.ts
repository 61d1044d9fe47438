// The band of each step as numbers, at the weight and with the approved figures that the pilot typed.
import type { Sheet } from '../../../../lib/aircraft/sheet.ts';
import { bandOver } from '../../../../lib/envelope/band.ts';
import { type Domain, domainOf } from '../../../../lib/envelope/domain.ts';
import type { Policy } from '../../../../lib/policy/policy.ts';
import { speedBounds } from '../../../../lib/procedure/cue.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import { type StepState, walk } from '../../../../lib/procedure/walk.ts';
import { type Entered, type ReaderBand, readerBand } from '../../../_ui/rail-rows.ts';
import { type Band, type Scale, scaleOf } from '../../../_ui/rail-shape.ts';

export type Figure = 'V1' | 'VR' | 'V2' | 'VREF' | 'VAPP';
/** kg and kt; null: not typed. */
export type Today = { readonly weight: number | null; readonly figures: Readonly<Partial<Record<Figure, number>>> };
export const NO_FIGURES: Today = { weight: null, figures: {} };

/** `all`: over every weight of the envelope, kt. `figure`: the approved figure that the step's cue names. */
export type StepBand = {
  readonly all: Band | null;
  readonly band: ReaderBand | null;
  readonly figure: { readonly name: Figure; readonly knots: number | null } | null;
};
export type Bands = { readonly of: ReadonlyMap<string, StepBand>; readonly scale: Scale };

export function bandsFor(procedure: Procedure, sheet: Sheet, policy: Policy, today: Today): Bands {
  const domain = domainOf(sheet, procedure.envelope);
  const entered: Entered = { V2: today.figures.V2, VREF: today.figures.VREF };
  const of = new Map(
    walk(procedure, sheet).map((state): [string, StepBand] => {
      const proof = proofAt(state, sheet, policy, domain);
      const all = proof?.overAll ? { low: proof.overAll.low.from, high: proof.overAll.high.to } : null;
      const at = { weight: today.weight ?? 0, elevation: 0, temperature: 0, wind: 0 };
      const band = proof && today.weight !== null ? readerBand(proof, at, entered) : null;
      return [state.step.id, { all, band, figure: figureOf(state, today) }];
    }),
  );
  const rows = [...of].map(([id, { all }]) => ({
    id,
    all,
    one: null,
    target: null,
    lowName: '',
    highName: '',
    because: '',
  }));
  return { of, scale: scaleOf(rows) };
}

function proofAt({ before }: StepState, sheet: Sheet, policy: Policy, domain: Domain) {
  if (!before.flapsKnown) return null;
  const gear = before.gear.includes('down') ? 'down' : 'up';
  const question = { flaps: before.indicated, phase: before.floor, gear, left: before.selected[0] } as const;
  return bandOver(sheet, policy, question, domain);
}

const FIGURES: readonly Figure[] = ['V1', 'VR', 'V2', 'VREF', 'VAPP'];

function figureOf(state: StepState, today: Today): StepBand['figure'] {
  for (const bound of state.ways.flatMap((way) => speedBounds(way))) {
    const { term } = bound;
    const name = term.kind === 'speed' ? FIGURES.find((figure) => figure === term.name) : undefined;
    if (name) return { name, knots: today.figures[name] ?? null };
  }
  return null;
}

/** Which approved figures a procedure speaks of, so that only those are asked for. */
export function figuresIn(procedure: Procedure, sheet: Sheet, policy: Policy): readonly Figure[] {
  const found = new Set<Figure>();
  const domain = domainOf(sheet, procedure.envelope);
  for (const state of walk(procedure, sheet)) {
    const cue = figureOf(state, NO_FIGURES);
    if (cue) found.add(cue.name);
    const proof = proofAt(state, sheet, policy, domain);
    for (const edge of proof?.lows ?? []) {
      if (edge.name.startsWith('V2')) found.add('V2');
      if (edge.name.startsWith('VREF')) found.add('VREF');
    }
  }
  return FIGURES.filter((figure) => found.has(figure));
}
