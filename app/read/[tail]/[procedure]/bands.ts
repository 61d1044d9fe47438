// The band of each step as numbers, at the weight and with the approved figures that the pilot typed.
import type { Sheet } from '../../../../lib/aircraft/sheet.ts';
import { bandOver } from '../../../../lib/envelope/band.ts';
import { domainOf } from '../../../../lib/envelope/domain.ts';
import type { Policy } from '../../../../lib/policy/policy.ts';
import { speedBounds } from '../../../../lib/procedure/cue.ts';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import { type StepState, walk } from '../../../../lib/procedure/walk.ts';
import { type Entered, type ReaderBand, readerBand } from '../../../_ui/rail-rows.ts';

export type Figure = 'V1' | 'VR' | 'V2' | 'VREF' | 'VAPP';
/** kg and kt; null: not typed. */
export type Today = { readonly weight: number | null; readonly figures: Readonly<Partial<Record<Figure, number>>> };
export const NO_FIGURES: Today = { weight: null, figures: {} };

/** `target`: the approved figure that the step's cue names, as typed; '' with its name where none was typed. */
export type StepBand = {
  readonly band: ReaderBand | null;
  readonly figure: { readonly name: Figure; readonly knots: number | null } | null;
};

export function bandsFor(procedure: Procedure, sheet: Sheet, policy: Policy, today: Today): Map<string, StepBand> {
  const domain = domainOf(sheet, procedure.envelope);
  const entered: Entered = { V2: today.figures.V2, VREF: today.figures.VREF };
  return new Map(
    walk(procedure, sheet).map((state) => {
      const { before } = state;
      const gear = before.gear.includes('down') ? 'down' : 'up';
      const proof =
        today.weight !== null && before.flapsKnown
          ? bandOver(
              sheet,
              policy,
              { flaps: before.indicated, phase: before.floor, gear, left: before.selected[0] },
              domain,
            )
          : null;
      const band = proof
        ? readerBand(proof, { weight: today.weight!, elevation: 0, temperature: 0, wind: 0 }, entered)
        : null;
      return [state.step.id as string, { band, figure: figureOf(state, today) }];
    }),
  );
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
    const { before } = state;
    if (!before.flapsKnown) continue;
    const proof = bandOver(
      sheet,
      policy,
      { flaps: before.indicated, phase: before.floor, gear: 'up', left: before.selected[0] },
      domain,
    );
    for (const edge of proof?.lows ?? []) {
      if (edge.name.startsWith('V2')) found.add('V2');
      if (edge.name.startsWith('VREF')) found.add('VREF');
    }
  }
  return FIGURES.filter((figure) => found.has(figure));
}
