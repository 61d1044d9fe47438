import type { Step } from '../../../../lib/procedure/procedure.ts';
import { Modes } from '../../../_ui/modes.tsx';
import { cueText, NoticeLine, StepWords } from '../../../_ui/script.tsx';
import css from '../../read.module.css';
import type { StepBand } from './bands.ts';

export function ReaderStep({ step, band, changed }: { step: Step; band: StepBand | null; changed: boolean }) {
  const classes = [css.step, step.flags.includes('memory') && css.memory, changed && css.changed]
    .filter(Boolean)
    .join(' ');
  return (
    <div className={classes}>
      {step.before.map((notice) => (
        <NoticeLine key={notice.text} kind={notice.kind} text={notice.text} />
      ))}
      <div className={css.cue}>
        {changed && <span className="unseen">changed: </span>}
        {cueText(step.cue)}
        {step.only && <span className="small"> only: {step.only}</span>}
      </div>
      <div className={css.do}>
        <b>{step.who}</b>
        <span>
          <StepWords step={step} />
        </span>
      </div>
      <Modes expect={step.expect} chips />
      {band && <BandFigures band={band} />}
    </div>
  );
}

const whole = (knots: number) => `${Math.round(knots)} kt`;

/** The band as numbers: the floor rounded up, the limit rounded down, so that rounding never widens it. */
function BandFigures({ band: { band, figure } }: { band: StepBand }) {
  if (!band && !figure) return null;
  return (
    <div className={css.band}>
      {band && (
        <span className={css.figures}>
          {band.lowName}: {band.low === null ? 'enter the approved figure' : <b>{whole(Math.ceil(band.low))}</b>}
        </span>
      )}
      {figure && (
        <span className={css.figures}>
          {figure.name}: {figure.knots === null ? 'enter it' : <b>{whole(figure.knots)}</b>}
        </span>
      )}
      {band && (
        <span className={css.figures}>
          {band.highName}: <b>{whole(Math.floor(band.high))}</b>
        </span>
      )}
    </div>
  );
}
