'use client';
import { memo, useEffect, useRef } from 'react';
import type { Finding } from '../../../../lib/check/finding.ts';
import { Modes } from '../../../_ui/modes.tsx';
import { Rail } from '../../../_ui/rail.tsx';
import type { RailRow, Scale } from '../../../_ui/rail-shape.ts';
import script from '../../../_ui/script.module.css';
import { cueText, NoticeLine, StepWords } from '../../../_ui/script.tsx';
import { useChosen, usePeersAt, useStep } from '../_draft/use-draft.ts';
import { nameOfStep, useEditing } from './editing.ts';
import css from './editor.module.css';
import { StepFields } from './step-fields.tsx';

export type RowRail = {
  row: RailRow;
  before: RailRow | null;
  after: RailRow | null;
  scale: Scale;
  weight: string;
} | null;

/** One step: read as it will read, or, when it is at hand, as fields in the same places. Drawn again only when it changes. */
export const StepRow = memo(function StepRow(props: {
  id: string;
  at: number;
  isCurrent: boolean;
  rail: RowRail;
  findings: readonly Finding[];
}) {
  const { id, at, isCurrent, rail, findings } = props;
  const step = useStep(id);
  const peers = usePeersAt(id);
  const chosen = useChosen().has(id);
  const { open, labels } = useEditing();
  const row = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (isCurrent) row.current?.scrollIntoView({ block: 'nearest' });
  }, [isCurrent]);
  if (!step) return null;
  const name = nameOfStep(labels[id] || step.label, at);
  const classes = [css.row, isCurrent && css.current, chosen && css.chosen].filter(Boolean).join(' ');
  return (
    <div ref={row} className={classes} data-step={id} id={id} data-chosen={chosen || undefined}>
      {!isCurrent && step.before.length > 0 && (
        <div className={script.before}>
          {step.before.map((notice, place) => (
            <NoticeLine key={place} kind={notice.kind} text={notice.text} />
          ))}
        </div>
      )}
      <div className={script.step}>
        <span className={step.flags.includes('critical') ? `${script.id} ${script.critical}` : script.id}>
          <button
            type="button"
            className={css.name}
            data-head={id}
            aria-expanded={isCurrent}
            aria-label={`Step ${name}${findings.length > 0 ? `, ${findings.length} findings` : ''}`}
            onClick={() => open(isCurrent ? null : id)}
          >
            {name}
          </button>
          <Marks findings={findings} />
        </span>
        {isCurrent ? (
          <StepFields step={step} />
        ) : (
          <>
            <span className={script.cue} data-open="cue">
              {step.cue ? cueText(step.cue) : <span className={css.missing}>no cue</span>}
              {step.only && <span className={script.only}> only: {step.only}</span>}
            </span>
            <span className={script.who} data-open="who">
              {step.who || <span className={css.missing}>nobody</span>}
            </span>
            <span className={script.act} data-open="object">
              <StepWords step={step} />
            </span>
            <span className={script.modes} data-open="expect.thrust">
              <Modes expect={step.expect} />
              {step.expectNote && <span className="small">{step.expectNote}</span>}
            </span>
          </>
        )}
        <span className={script.band}>{rail && <Rail {...rail} />}</span>
      </div>
      {peers.length > 0 && (
        <span className={css.peers}>
          {peers.map((peer) => (
            <span key={peer.tab}>{peer.person.name} is here</span>
          ))}
        </span>
      )}
    </div>
  );
});

function Marks({ findings }: { findings: readonly Finding[] }) {
  const stop = findings.some((finding) => finding.severity === 'STOP');
  const answer = findings.some((finding) => finding.severity === 'ANSWER');
  if (!stop && !answer) return null;
  return <span className={stop ? css.stop : css.answer} title={stop ? 'STOP' : 'ANSWER'} aria-hidden="true" />;
}
