import type { Envelope, Procedure, Range, StateLine } from '../../lib/procedure/procedure.ts';
import { formatNumber, typeset } from '../../lib/units/format.ts';
import css from './procedure-facts.module.css';

const range = (of: Range | null, say: (n: number) => string, unit: string) =>
  of ? `${say(of.from)} to ${say(of.to)}${unit}` : '';

export function envelopeLines(envelope: Envelope): readonly string[] {
  const whole = (n: number) => formatNumber(n);
  return [
    range(envelope.weight, (kg) => formatNumber(kg / 1000, 1), ' t'),
    range(envelope.elevation, whole, ' ft elevation'),
    range(envelope.temperature, (n) => `ISA${n < 0 ? '−' : '+'}${Math.abs(n)}`, ''),
    range(envelope.wind, whole, ' kt wind along the runway or track'),
    range(envelope.level, whole, ' ft level'),
    envelope.detents.length > 0 ? envelope.detents.join(', ') : '',
  ].filter(Boolean);
}

/** A state line as a pilot would say it. */
export function sayState(state: StateLine): string {
  const any = (words: readonly string[]) => words.join(' or ');
  return [
    state.flaps.length > 0 ? `flaps ${any(state.flaps)}` : '',
    state.gear ? `gear ${state.gear}` : '',
    state.speed,
    state.autopilot && `autopilot ${state.autopilot}`,
    [state.thrust, state.lateral, state.vertical].map(any).filter(Boolean).join(' / '),
    state.armed === null ? '' : state.armed.length === 0 ? 'nothing armed' : `${state.armed.join(', ')} armed`,
    state.selectedAltitude && `selected altitude ${state.selectedAltitude}`,
    state.also,
  ]
    .filter(Boolean)
    .join(' · ');
}

export function ProcedureFacts({ procedure }: { procedure: Procedure }) {
  const { effectivity } = procedure;
  const facts = [
    [
      'For',
      [
        effectivity.type,
        effectivity.standards.length > 0 ? `standard ${effectivity.standards.join(', ')}` : '',
        effectivity.note,
      ]
        .filter(Boolean)
        .join(' · '),
    ],
    ['Written for', envelopeLines(procedure.envelope).join(' · ')],
    ['Weight limit', procedure.weightLimit],
    ['Starts from', sayState(procedure.entry)],
    ['Ends with', sayState(procedure.exit)],
    ['Leaves to', procedure.leavesTo.join(', ')],
  ].filter(([, said]) => said);
  return (
    <dl className={css.facts}>
      {facts.map(([name, said]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{typeset(said!)}</dd>
        </div>
      ))}
    </dl>
  );
}
