import type { Step } from '../../../../lib/procedure/procedure.ts';
import { Modes } from '../../../_ui/modes.tsx';
import type { Scale } from '../../../_ui/rail-shape.ts';
import { cueText, NoticeLine, StepWords } from '../../../_ui/script.tsx';
import css from '../../read.module.css';
import { BandBar } from './band-bar.tsx';
import type { StepBand } from './bands.ts';

export function ReaderStep({
  step,
  band,
  scale,
  changed,
}: {
  step: Step;
  band: StepBand | null;
  changed: boolean;
  scale: Scale | null;
}) {
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
      {band && scale && <BandBar band={band} scale={scale} />}
    </div>
  );
}
