'use client';
import type { Procedure } from '../../../../lib/procedure/procedure.ts';
import type { OpenDraft } from '../../../../lib/server/drafts.ts';
import { useEditing } from './editing.ts';
import css from './editor.module.css';
import { FindingsPanel } from './findings-panel.tsx';
import { StepPanel } from './step-panel.tsx';
import { SubmitPanel } from './submit-panel.tsx';
import type { Checking } from './use-checks.ts';
import { WeightSlider } from './weight-slider.tsx';

const TABS = ['Findings', 'State here', 'Submit'] as const;
export type Tab = (typeof TABS)[number];

export function SidePanel(props: {
  open: OpenDraft;
  checking: Checking;
  procedure: Procedure;
  weight: number | null;
  onWeight: (weight: number) => void;
  tab: Tab;
  onTab: (tab: Tab) => void;
}) {
  const { open, checking, procedure, tab, onTab } = props;
  const { sheet } = useEditing();
  return (
    <aside className={`${css.side} no-print`} aria-label="Checks">
      <div className={css.tabs} role="tablist" aria-label="Beside the page">
        {TABS.map((one) => (
          <button
            key={one}
            type="button"
            role="tab"
            id={`tab-${one}`}
            aria-selected={tab === one}
            aria-controls="beside"
            onClick={() => onTab(one)}
          >
            {one}
          </button>
        ))}
      </div>
      <div id="beside" role="tabpanel" aria-labelledby={`tab-${tab}`} className={css.panel}>
        {tab === 'Findings' && <FindingsPanel open={open} checking={checking} />}
        {tab === 'State here' && <StepPanel procedure={procedure} />}
        {tab === 'Submit' && <SubmitPanel open={open} checking={checking} />}
      </div>
      {sheet && <WeightSlider procedure={procedure} sheet={sheet} weight={props.weight} onWeight={props.onWeight} />}
      <p className="small">
        Not for dispatch. The approved flight manual and the authority prevail. Bands come from sheet{' '}
        {open.sheet?.revision ?? '–'}; V speeds are entered, never computed here.
      </p>
    </aside>
  );
}
