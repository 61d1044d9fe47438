'use client';
import { useState } from 'react';
import { RECORDED_COLUMNS, type Recording, readRecording } from '../../../../lib/flight/recording.ts';
import type { Trace } from '../../../../lib/flight/trace.ts';
import { Button } from '../../../_ui/button.tsx';
import { Notice } from '../../../_ui/notice.tsx';
import { differences, sayDifference } from './against-recording.ts';
import { Rows } from './chart-parts.tsx';
import css from './fly.module.css';

export type Laid = { readonly name: string; readonly recording: Recording };
type Props = {
  other: string;
  against: boolean;
  onAgainst: (on: boolean) => void;
  laid: Laid | null;
  onLaid: (laid: Laid | null) => void;
  shift: number;
  onShift: (shift: number) => void;
  trace: Trace;
};
/** A file larger than this is no flight, bytes. */
const MOST = 20_000_000;

/** Another version of the procedure, or what was recorded, over the flight. */
export function LayOver(props: Props) {
  const { other, against, onAgainst, laid, onLaid, shift, onShift, trace } = props;
  const [refused, setRefused] = useState('');
  const take = async (file: File | undefined): Promise<void> => {
    setRefused('');
    if (file === undefined) return;
    if (file.size > MOST) setRefused(`${file.name} is larger than 20 MB. Nothing was laid over; cut it to the flight.`);
    else onLaid({ name: file.name, recording: readRecording(await file.text()) });
  };
  return (
    <section className={`${css.box} no-print`} aria-label="Lay over">
      <h2>Lay over</h2>
      {other === '' ? (
        <p className="small">There is no issue before this text to lay over it.</p>
      ) : (
        <label className={css.tick}>
          <input type="checkbox" checked={against} onChange={(event) => onAgainst(event.target.checked)} />
          {other}, flown under the same conditions
        </label>
      )}
      <label className={css.figureField}>
        <span>A recorded flight or simulator session, CSV</span>
        <input
          type="file"
          accept=".csv,.txt,text/csv,text/plain"
          onChange={(event) => void take(event.target.files?.[0])}
        />
      </label>
      {refused !== '' && (
        <Notice kind="stop" live>
          {refused}
        </Notice>
      )}
      {laid && (
        <div role="status">
          <p>
            <b>{laid.name}</b>: {laid.recording.rows.length} lines laid over
            {laid.recording.problems.length > 0 && `, ${laid.recording.problems.length} left out or said`}.
          </p>
          <label className={css.figureField}>
            <span>Moved by {shift} s</span>
            <input
              type="range"
              min={-120}
              max={120}
              step={1}
              value={shift}
              aria-valuetext={`${shift} s`}
              onChange={(event) => onShift(Number(event.target.value))}
            />
          </label>
          <ul>
            {differences(trace, laid.recording, shift).map((one) => (
              <li key={one.what}>{sayDifference(one)}</li>
            ))}
          </ul>
          <p className="small">What differs is a finding on the model, not on the crew.</p>
          {laid.recording.problems.length > 0 && (
            <details open={laid.recording.rows.length === 0}>
              <summary>What could not be read</summary>
              <ul>
                {laid.recording.problems.map(({ line, says }, place) => (
                  <li key={`${line} ${place}`}>{says}</li>
                ))}
              </ul>
            </details>
          )}
          <Button look="plain" onClick={() => onLaid(null)}>
            Take the recording away
          </Button>
        </div>
      )}
      <details>
        <summary>How the file is written</summary>
        <p className="small">
          A header, then one line a moment; commas, semicolons or tabs. Needed: time, and one of speed, height and
          altitude. Other columns are passed over. The file stays in this browser.
        </p>
        <Rows
          heads={['Column', 'Unit', 'What']}
          rows={RECORDED_COLUMNS.map(({ name, unit, says }) => [
            <span key={name} className="gate">
              {name}
            </span>,
            unit,
            says,
          ])}
        />
        <pre className="gate">{'time,speed,height\n0,131,200\n1,133,196'}</pre>
      </details>
    </section>
  );
}
