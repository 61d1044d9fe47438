import type { ReactNode } from 'react';
import { parseGate } from '../../lib/gate/parse.ts';
import { prettyGate } from '../../lib/gate/print.ts';
import type { Branch, Procedure, Step } from '../../lib/procedure/procedure.ts';
import { typeset } from '../../lib/units/format.ts';
import { Modes } from './modes.tsx';
import { Notice } from './notice.tsx';
import { Rail } from './rail.tsx';
import type { RailRow, Scale } from './rail-shape.ts';
import css from './script.module.css';

export type RailOf = { rows: ReadonlyMap<string, RailRow>; scale: Scale; weight: string };

/** A procedure as it will read: cue, who, action and words, expected modes, band. */
export function Script({
  procedure,
  rail,
  aside,
}: {
  procedure: Procedure;
  rail: RailOf | null;
  aside?: (id: string) => ReactNode;
}) {
  return (
    <div className={css.script}>
      <Columns rail={rail !== null} />
      <Line steps={procedure.steps} rail={rail} aside={aside} />
      {procedure.branches.map((branch) => (
        <BranchPart key={branch.id} branch={branch} rail={rail} aside={aside} />
      ))}
    </div>
  );
}

export function Columns({ rail }: { rail: boolean }) {
  return (
    <div className={css.cols} aria-hidden="true">
      <span>Step</span>
      <span>Cue</span>
      <span>Who</span>
      <span>Action and words</span>
      <span>Expect</span>
      <span>{rail ? 'Band, kt' : ''}</span>
    </div>
  );
}

function BranchPart({
  branch,
  rail,
  aside,
}: {
  branch: Branch;
  rail: RailOf | null;
  aside?: (id: string) => ReactNode;
}) {
  return (
    <section className={css.branch} aria-label={branch.title}>
      <header>
        <span className="label">Branch {branch.label}</span>
        <h2>{branch.title}</h2>
        <span className={css.cue}>{cueText(branch.when)}</span>
      </header>
      {branch.before.map((notice) => (
        <NoticeLine key={notice.text} kind={notice.kind} text={notice.text} />
      ))}
      <Line steps={branch.steps} rail={rail} aside={aside} />
      {branch.joins && <p className="small">Then on with {branch.joins}</p>}
    </section>
  );
}

function Line({
  steps,
  rail,
  aside,
}: {
  steps: readonly Step[];
  rail: RailOf | null;
  aside?: (id: string) => ReactNode;
}) {
  const row = (at: number) => (steps[at] ? (rail?.rows.get(steps[at].id) ?? null) : null);
  return steps.map((step, at) => (
    <div key={step.id} id={step.id}>
      {step.before.length > 0 && (
        <div className={css.before}>
          {step.before.map((notice) => (
            <NoticeLine key={notice.text} kind={notice.kind} text={notice.text} />
          ))}
        </div>
      )}
      <div className={css.step}>
        <span className={step.flags.includes('critical') ? `${css.id} ${css.critical}` : css.id}>
          {step.flags.includes('critical') && <span className="unseen">flight-path critical </span>}
          {step.label || 'new'}
        </span>
        <span className={css.cue}>
          {cueText(step.cue)}
          {step.only && <span className={css.only}> only: {typeset(step.only)}</span>}
        </span>
        <span className={css.who}>{step.who || '–'}</span>
        <span className={css.act}>
          <StepWords step={step} />
          {aside?.(step.id)}
        </span>
        <span className={css.modes}>
          <Modes expect={step.expect} />
          {step.expectNote && <span className="small">{step.expectNote}</span>}
        </span>
        <span className={css.band}>
          {rail && row(at) && (
            <Rail row={row(at)!} before={row(at - 1)} after={row(at + 1)} scale={rail.scale} weight={rail.weight} />
          )}
        </span>
      </div>
    </div>
  ));
}

export function StepWords({ step, check = true }: { step: Step; check?: boolean }) {
  return (
    <>
      {step.orderWords && (
        <span className={css.say}>
          {step.orderBy} <q>{typeset(step.orderWords)}</q>
          <br />
        </span>
      )}
      <span>{actOf(step)}</span>
      {(step.say || step.reply || step.replyAct) && (
        <span className={css.say}>
          <br />
          {step.say && (
            <>
              {step.sayBy && `${step.sayBy} `}
              <q>{typeset(step.say)}</q>{' '}
            </>
          )}
          {(step.reply || step.replyAct) && (
            <>
              {step.replyBy} {step.reply ? <q>{typeset(step.reply)}</q> : typeset(step.replyAct)}
            </>
          )}
        </span>
      )}
      {check && step.checkBy && (
        <p className={css.check}>
          {step.checkBy} sees {typeset(step.checkSees)}
          {step.checkWithin && typeset(` within ${step.checkWithin}`)}
          {step.checkIfNot && typeset(`; if not: ${step.checkIfNot}`)}
        </p>
      )}
      {step.note && <p className={css.check}>{typeset(step.note)}</p>}
      {step.branch.map((way) => (
        <p key={way.when + way.to} className={css.check}>
          {typeset(way.when)}: {way.to}
        </p>
      ))}
    </>
  );
}

/** `Press GO-AROUND switch`, `Select flap lever, F18`. */
export function actOf(step: Step): string {
  const act = [step.verb === 'wait-for' ? 'wait for' : step.verb, step.object].filter(Boolean).join(' ');
  const line = step.value ? `${act}: ${step.value}` : act;
  return typeset(line.charAt(0).toUpperCase() + line.slice(1));
}

/** Gates are shown as pilots read them (≥, ≤); a gate that can't be read yet is shown as it was typed. */
export function cueText(cue: string): string {
  const { gate, problems } = parseGate(cue);
  return typeset(gate && problems.length === 0 ? prettyGate(gate) : cue);
}

const WORD = { note: 'Note', caution: 'Caution', warning: 'Warning' } as const;

export function NoticeLine({ kind, text }: { kind: 'note' | 'caution' | 'warning'; text: string }) {
  return (
    <Notice kind={kind} word={WORD[kind]}>
      <Marked text={text} />
    </Notice>
  );
}

/** `**strong**` and `_emphasis_`, nothing else. */
export function Marked({ text }: { text: string }) {
  return typeset(text)
    .split(/(\*\*[^*]+\*\*|_[^_]+_)/g)
    .map((part, at) => {
      if (part.startsWith('**') && part.length > 4) return <strong key={at}>{part.slice(2, -2)}</strong>;
      if (part.startsWith('_') && part.length > 2) return <em key={at}>{part.slice(1, -1)}</em>;
      return part;
    });
}
