'use client';
import { useState } from 'react';
import { type Figure, type FigureChange, figureChanges } from '../../../../lib/flight/figures.ts';
import { FLIGHT_VERSION } from '../../../../lib/flight/trace.ts';
import type { OpenFlight } from '../../../../lib/server/flights.ts';
import { formatNumber, typeset } from '../../../../lib/units/format.ts';
import { ActForm } from '../../../_ui/act-form.tsx';
import { Button } from '../../../_ui/button.tsx';
import { Field } from '../../../_ui/field.tsx';
import { ScrollBox } from '../../../_ui/scroll-box.tsx';
import { sayTime } from '../../../_ui/when.tsx';
import { keep } from '../actions.ts';
import { Rows } from './chart-parts.tsx';
import css from './fly.module.css';
import type { Given } from './fly-one.ts';

type Props = {
  open: OpenFlight;
  given: Given;
  says: string;
  onGiven: (given: Given) => void;
  replay: (given: Given, hear: (figures: readonly Figure[]) => void) => void;
};

/** The flights kept with a candidate: shown again, flown again by the engine of today, and one more kept. */
export function KeptRuns({ open, given, says, onGiven, replay }: Props) {
  return (
    <section className={css.box} aria-label="Flights kept with this candidate">
      <h2>Kept with this candidate</h2>
      {open.kept.length === 0 && <p className="small">No flight is kept with it yet.</p>}
      {open.kept.map((run) => (
        <Run key={run.runId} run={run} onGiven={onGiven} replay={replay} />
      ))}
      {open.may.keep && (
        <ActForm
          act={(words) => keep({ candidateId: open.id, conditions: given, note: String(words.note ?? '') })}
          onDone={() => ({ say: 'Kept, as this server flew it.' })}
          button="Keep this flight"
          look="quiet"
        >
          <Field label="Why this one" name="note" required defaultValue={says} key={says} />
        </ActForm>
      )}
    </section>
  );
}

function Run({ run, onGiven, replay }: { run: OpenFlight['kept'][number] } & Pick<Props, 'onGiven' | 'replay'>) {
  const [changes, setChanges] = useState<readonly FigureChange[] | null>(null);
  const same = run.engine === FLIGHT_VERSION;
  return (
    <div className={css.run}>
      <p>
        <b>{typeset(`${formatNumber(run.conditions.weight / 1000, 1)} t`)}</b>, {run.note}{' '}
        <span className="small">
          {run.by}, {sayTime(run.at)}, flight model {run.engine}
          {same ? '' : `; here ${FLIGHT_VERSION}`}
        </span>
      </p>
      <div className={css.acts}>
        <Button look="plain" onClick={() => onGiven(run.conditions)}>
          Show it
        </Button>
        <Button
          look="plain"
          onClick={() => replay(run.conditions, (figures) => setChanges(figureChanges(run.figures, figures)))}
        >
          Fly it again and compare
        </Button>
      </div>
      <div role="status">
        {changes?.length === 0 && <p>Flown again: all {run.figures.length} figures are the same.</p>}
        {changes !== null && changes.length > 0 && (
          <>
            <p>
              Flown again by model {FLIGHT_VERSION}: {changes.length} of {run.figures.length} figures differ.
            </p>
            <ScrollBox>
              <Rows
                heads={['Figure', `Kept, model ${run.engine}`, `Now, model ${FLIGHT_VERSION}`]}
                rows={changes.map(({ name, was, now }) => [name, sayFigure(was), sayFigure(now)])}
              />
            </ScrollBox>
          </>
        )}
      </div>
    </div>
  );
}

const sayFigure = (figure: Figure | null): string =>
  figure?.value == null
    ? '–'
    : typeof figure.value === 'string'
      ? figure.value
      : typeset(`${formatNumber(figure.value)} ${figure.unit}`);
