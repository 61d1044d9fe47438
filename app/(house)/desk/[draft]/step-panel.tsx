'use client';
import { useMemo } from 'react';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import type { AircraftState } from '../../../../lib/procedure/state.ts';
import { walk } from '../../../../lib/procedure/walk.ts';
import { useEditing } from './editing.ts';
import css from './editor.module.css';
import { ModePanel } from './mode-panel.tsx';

/** What may be the case before and after the step at hand, as far as the text says it. */
export function StepPanel({ procedure }: { procedure: Procedure }) {
  const { current, sheet } = useEditing();
  const states = useMemo(() => walk(procedure, sheet), [procedure, sheet]);
  const state = states.find((one) => one.step.id === current);
  if (!state) return <p className="small">Open a step to see what may be the case before and after it.</p>;
  const rows = factsOf(state.before).map(([name, before], at) => [name, before, factsOf(state.after)[at]![1]] as const);
  return (
    <>
      <table className={css.state}>
        <thead>
          <tr>
            <th>Where the text says it</th>
            <th>before</th>
            <th>after</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, before, after]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{before}</td>
              <td className={before === after ? undefined : css.differs}>{after}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {sheet && <ModePanel procedure={procedure} modes={sheet.modes} step={state.step.id} />}
    </>
  );
}

const any = (words: readonly string[]) => (words.length === 0 ? 'not said' : words.join(' or '));

function factsOf(state: AircraftState): readonly (readonly [string, string])[] {
  const { modes, target } = state;
  return [
    ['flap lever', state.flapsKnown ? any(state.selected) : 'not said'],
    ['flap indicated', state.flapsKnown ? any(state.indicated) : 'not said'],
    ['gear', any(state.gear)],
    ['speed target', target.kind === 'unknown' ? 'not said' : target.text],
    ['autopilot', state.autopilot === 'either' ? 'on or off' : state.autopilot],
    ['thrust', any(modes.thrust)],
    ['lateral', any(modes.lateral)],
    ['vertical', any(modes.vertical)],
    ['armed', modes.armed === null ? 'not said' : modes.armed.join(', ') || 'nothing'],
    ['selected altitude', state.selectedAltitude || 'not said'],
  ];
}
